using Viscolog.Core.Curves;
using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Inference;

public sealed class PairPosteriorTests
{
    private static readonly Percentage Level = Percentage.FromPercent(90);

    private static readonly Run Exact = PairBench.Along(20000, (20, 30), ("S", 0.7), ("A", 0.7), ("S", 0.7), ("A", 0.7), ("A", 0.7));

    [Fact]
    public void Where_the_pot_stands_body_and_string_are_what_was_read()
    {
        var posterior = PairBench.Posterior(Exact);
        var body = posterior.BodyAt(new(Dose.FromPercent(2.1), Dose.FromPercent(1.4)), Level);
        Assert.InRange(body.Median.MilliPascalSeconds / PairBench.Body(2.1, 1.4), 0.97, 1.03);
        Assert.InRange(
            posterior.StringAt(new(Dose.FromPercent(2.1), Dose.FromPercent(1.4)), Level).Median.Millimeters / PairBench.Length(2.1, 1.4),
            0.85,
            1.15);
    }

    [Fact]
    public void A_little_further_the_truth_lies_in_the_intervals()
    {
        var posterior = PairBench.Posterior(Exact);
        foreach (var (a, s) in new[] { (2.4, 1.4), (2.1, 1.8), (2.4, 1.8) })
        {
            var (body, length) = (
                posterior.BodyAt(new(Dose.FromPercent(a), Dose.FromPercent(s)), Level),
                posterior.StringAt(new(Dose.FromPercent(a), Dose.FromPercent(s)), Level));
            Assert.InRange(PairBench.Body(a, s), body.Low.MilliPascalSeconds, body.High.MilliPascalSeconds);
            Assert.InRange(PairBench.Length(a, s), length.Low.Millimeters, length.High.Millimeters);
        }
    }

    [Fact]
    public void The_further_from_the_last_dose_the_less_is_known()
    {
        var posterior = PairBench.Posterior(Exact);
        double Width(double a, double s) => posterior.BodyAt(new(Dose.FromPercent(a), Dose.FromPercent(s)), Level) is var e
            ? Math.Log(e.High.MilliPascalSeconds / e.Low.MilliPascalSeconds)
            : 0;
        Assert.True(Width(2.1, 1.4) < Width(2.5, 1.4));
        Assert.True(Width(2.5, 1.4) < Width(3.5, 1.4));
        Assert.True(Width(2.1, 1.4) < Width(2.1, 2.4));
    }

    [Fact]
    public void Earlier_doses_are_remembered()
    {
        var posterior = PairBench.Posterior(Exact);
        var there = posterior.BodyAt(new(Dose.FromPercent(0.7), Dose.FromPercent(0.7)), Level);
        Assert.InRange(PairBench.Body(0.7, 0.7), there.Low.MilliPascalSeconds, there.High.MilliPascalSeconds);
        Assert.True(there.High.MilliPascalSeconds / there.Low.MilliPascalSeconds < 1.25);
    }

    [Fact]
    public void No_string_at_all_counts_as_the_rulers_least()
    {
        var run = PairBench.Run(6000, (13, 20), PairBench.Read(1000, 0), PairBench.Dose("S", 1), PairBench.Read(1350, 4));
        var posterior = PairBench.Posterior(run);
        Assert.InRange(posterior.StringAt(new(Dose.None, Dose.None), Level).Median.Millimeters, 0.3, 3);
    }

    [Fact]
    public void Water_of_pre_dilution_blurs_nothing()
    {
        var thickened = Exact with
        {
            Thickeners = [Exact.Thickeners[0] with { Dilution = new(1, 1) }, Exact.Thickeners[1] with { Dilution = new(1, 3) }],
        };
        var evidence = Assert.IsType<EvidenceOutcome.Usable>(Evidence.OfPair(thickened)).Evidence;
        BodyReading[] readings = [.. evidence.Steps.SelectMany(s => s.Readings)];
        Assert.Equal(6, readings.Length);
        Assert.All(readings, r => Assert.Equal(0, r.ExtraVariance, 1e-12));
    }

    [Fact]
    public void Weights_sum_to_one_and_the_fit_names_both_models()
    {
        var posterior = PairBench.Posterior(Exact);
        Assert.Equal(1, posterior.ShapeWeights.Sum(), 1e-9);
        var fit = PairFits.Of(posterior);
        Assert.NotEmpty(fit.Shapes);
        var rise = fit.Body.Single(p => p.Name.StartsWith("rise by S", StringComparison.Ordinal));
        // 0.3 for each per cent of S over a range of 5 %; less than half of the range was seen.
        Assert.InRange(rise.Value, 0.8, 2.2);
        Assert.True(fit.Strings.Single(p => p.Name.StartsWith("rise by S", StringComparison.Ordinal)).Value > 1);
        Assert.All(
            fit.Body.Concat(fit.Strings),
            p => Assert.True(double.IsFinite(p.Value) && (p.StandardError > 0 || p.Name == "chance of a late rise")));
    }

    [Fact]
    public void Every_form_of_rise_goes_from_nothing_to_all_and_never_back()
    {
        foreach (var form in StringForm.All)
        {
            double[] numbers = [.. form.Priors.Select(p => p.Mean)];
            Assert.Equal(0, form.Rise(numbers, 0), 1e-12);
            Assert.Equal(1, form.Rise(numbers, 1), 1e-12);
            double[] rises = [.. Enumerable.Range(0, 25).Select(i => form.Rise(numbers, i / 20.0))];
            Assert.Equal(rises.Order(), rises);
        }
    }

    [Fact]
    public void A_string_that_comes_late_is_known_for_one()
    {
        // A logistic rise, which neither form is: half-way at 2 of 5 %, ten times the base's string at the top.
        double Length(double s) => 8 * Math.Exp(2.3 * (Logistic(s) - Logistic(0)) / (Logistic(5) - Logistic(0)));
        double Logistic(double s) => 1 / (1 + Math.Exp((2 - s) / 0.6));
        double Late(Func<double, double> length)
        {
            List<Entry> entries = [PairBench.Read(1000, length(0))];
            for (var i = 1; i <= 6; i++)
            {
                entries.Add(PairBench.Dose("S", 0.4));
                entries.Add(PairBench.Read(1000 * Math.Exp(0.12 * i), length(0.4 * i)));
                entries.Add(PairBench.Read(1000 * Math.Exp(0.12 * i), length(0.4 * i)));
            }

            var fit = PairFits.Of(PairBench.Posterior(PairBench.Run(6000, (60, 90), [.. entries])));
            return fit.Strings.SingleOrDefault(p => p.Name == "chance of a late rise")?.Value ?? 0;
        }

        var (late, early) = (Late(Length), Late(s => 8 * Math.Exp(2.3 * (1 - Math.Exp(-s / 2)) / (1 - Math.Exp(-2.5)))));
        Assert.True(late > 60, $"{late:0} % for a late rise");
        Assert.True(early < 15, $"{early:0} % for an early one");
    }
}
