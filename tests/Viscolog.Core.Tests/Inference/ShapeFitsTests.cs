using Viscolog.Core.Curves;
using Viscolog.Core.Inference;
using Viscolog.Core.Pots;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Inference;

public sealed class ShapeFitsTests
{
    [Fact]
    public void A_long_exact_run_gives_its_law_back()
    {
        var run = Bench.AlongSigmoid(9000, 0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.6, 0.6, 0.6);
        var fits = ShapeFits.Of(((PosteriorOutcome.Found)Posteriors.OfCurve(run, null, [])).Posterior);
        var sigmoid = fits.Single(f => f.Shape.Name == "sigmoid");
        Assert.Equal(sigmoid, fits[0]);
        Assert.Null(sigmoid.Trouble);
        double Value(string name) => sigmoid.Parameters.Single(p => p.Name == name).Value;
        Assert.Equal(1000, Value("base"), 15.0);
        Assert.Equal(4, Value("span"), 0.1);
        Assert.Equal(2, Value("half-way dose"), 0.05);
        Assert.Equal(2.5, Value("steepness"), 0.1);
        Assert.DoesNotContain(sigmoid.Parameters, p => p.PriorDecides);
    }

    /// <summary>
    /// A figure with digits too many or too few bends no curve and does not pass for scatter: the law is given back as without it.
    /// </summary>
    [Theory]
    [InlineData(10)]
    [InlineData(0.001)]
    [InlineData(1e5)]
    public void A_blunder_bends_no_fit(double factor)
    {
        var run = Bench.AlongSigmoid(9000, 0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.6, 0.6, 0.6);
        var last = ((Entry.Measured)run.Entries[^1]).Reading.Value!.Shown;
        var blundered = run with { Entries = run.Entries.Add(Bench.Read(factor * last)) };
        var sigmoid = ShapeFits.Of(((PosteriorOutcome.Found)Posteriors.OfCurve(blundered, null, [])).Posterior)
            .Single(f => f.Shape.Name == "sigmoid");
        double Value(string name) => sigmoid.Parameters.Single(p => p.Name == name).Value;
        Assert.Equal(4, Value("span"), 0.1);
        Assert.Equal(2, Value("half-way dose"), 0.05);
        Assert.Equal(2.5, Value("steepness"), 0.1);
        Assert.InRange(sigmoid.ResidualRepeatability!.Value, 0, 0.03);
    }

    [Fact]
    public void With_too_few_readings_no_criterion_is_claimed_and_the_prior_is_named()
    {
        var run = Bench.AlongSigmoid(9000, 0.5);
        var fits = ShapeFits.Of(((PosteriorOutcome.Found)Posteriors.OfCurve(run, null, [])).Posterior);
        Assert.Equal(
            Shapes.All.Select(s => s.Name).Order(StringComparer.Ordinal), fits.Select(f => f.Shape.Name).Order(StringComparer.Ordinal));
        Assert.All(fits, f => Assert.Null(f.Aicc));
        ShapeFit[] wide = [.. fits.Where(f => f.Parameters.Length > 3)];
        Assert.NotEmpty(wide);
        Assert.All(wide, f => Assert.Contains(f.Parameters, p => p.PriorDecides));
    }
}
