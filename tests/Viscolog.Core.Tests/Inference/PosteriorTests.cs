using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Sampling;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Inference;

public sealed class PosteriorTests
{
    private static readonly Percentage Level = Percentage.FromPercent(90);

    [Fact]
    public void The_same_evidence_gives_the_same_belief()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 0.7, 0.6);
        var (one, other) = (Of(run), Of(run));
        Assert.Equal(one.ShapeWeights, other.ShapeWeights);
        Assert.Equal(one.BodyAt(Dose.FromPercent(2.2), Level), other.BodyAt(Dose.FromPercent(2.2), Level));
    }

    [Fact]
    public void Weights_sum_to_one()
        => Assert.Equal(1, Of(Bench.AlongSigmoid(9000, 0.5, 0.7)).ShapeWeights.Sum(), 9);

    [Fact]
    public void Where_readings_lie_the_belief_passes_through_them()
    {
        var posterior = Of(Bench.AlongSigmoid(9000, 0.5, 0.7, 0.6, 0.5));
        foreach (var dose in new[] { 0.5, 1.2, 1.8, 2.3 })
        {
            var body = posterior.BodyAt(Dose.FromPercent(dose), Level);
            Assert.InRange(Bench.Sigmoid(dose), body.Low.MilliPascalSeconds, body.High.MilliPascalSeconds);
        }
    }

    [Fact]
    public void The_forecast_grows_unsure_with_the_distance()
    {
        var posterior = Of(Bench.AlongSigmoid(30000, 0.5, 0.7, 0.6));
        double Width(double dose)
        {
            var body = posterior.BodyAt(Dose.FromPercent(dose), Level);
            return body.High.Ln - body.Low.Ln;
        }

        Assert.True(Width(1.8) < Width(2.2));
        Assert.True(Width(2.2) < Width(3));
    }

    [Fact]
    public void Before_any_dose_a_target_is_thought_to_lie_within_the_usual_range()
    {
        var evidence = Of(Bench.Run(9000, Bench.Read(1000))).Evidence;
        var (low, target) = (Bench.Thickener.UsualRange.Low, Bench.Run(2000).Target!.Band);
        double Below(ViscosityBand? band) => Posteriors.Under(evidence, Prior.Common, band).ChanceOfReaching(target.Aim, low).Fraction;

        // Less likely than among curves of which nobody wants anything, yet never ruled out: thin targets exist.
        Assert.True(Below(target) < 0.8 * Below(null));
        Assert.True(Below(target) > 0.2 * Below(null));
    }

    [Fact]
    public void A_reading_is_less_sure_than_the_body()
    {
        var posterior = Of(Bench.AlongSigmoid(9000, 0.5, 0.7));
        var (body, reading) = (posterior.BodyAt(Dose.FromPercent(1.2), Level), posterior.ReadingAt(Dose.FromPercent(1.2), Level));
        Assert.True(reading.High.Ln - reading.Low.Ln > body.High.Ln - body.Low.Ln);
    }

    [Fact]
    public void One_reading_is_known_to_the_repeatability_where_that_is_stated()
    {
        // 90 % of a normal distribution lie within 1.645 standard deviations (any table of the normal distribution): 4 % gives
        // 2·1.645·0.04,
        // and a little more as a stated value is taken to be good to a fifth.
        var run = Bench.Run(5000, Bench.Read(1000)) with { Repeatability = Percentage.FromPercent(4) };
        var body = Of(run).BodyAt(Dose.None, Level);
        Assert.Equal(2 * 1.645 * 0.04, body.High.Ln - body.Low.Ln, 0.01);
    }

    /// <summary>
    /// Unstated, ln of the repeatability over the default is normal about 0.28 by 0.6: the sum of such a scale mixture of normals has its
    /// 95 % point at 2.27 defaults (by numeric integration), against 1.645 of a known one.
    /// </summary>
    [Fact]
    public void One_reading_is_known_less_well_where_no_repeatability_is_stated()
    {
        var body = Of(Bench.Run(5000, Bench.Read(1000))).BodyAt(Dose.None, Level);
        Assert.Equal(2 * Mixed(0.95) * 0.04, body.High.Ln - body.Low.Ln, 0.025);

        static double Mixed(double part)
        {
            var (low, high) = (0.0, 20.0);
            while (high - low > 1e-6)
            {
                var middle = (low + high) / 2;
                var below = Enumerable.Range(-50, 101)
                    .Sum(
                        i => Math.Exp(-0.5 * i * i / 100) * MathNet.Numerics.Distributions.Normal.CDF(
                            0, 1, middle / Math.Exp(0.28 + (0.06 * i))))
                    / Enumerable.Range(-50, 101).Sum(i => Math.Exp(-0.5 * i * i / 100));
                (low, high) = below < part ? (middle, high) : (low, middle);
            }

            return low;
        }
    }

    /// <summary>
    /// Five repeats that scatter by 12 % tell of it: a further reading is then expected to scatter by more than twice the default.
    /// </summary>
    [Fact]
    public void Repeats_that_scatter_teach_the_scatter()
    {
        double[] off = [-0.15, 0.1, 0.02, -0.1, 0.13];
        var rough = Of(Bench.Run(5000, [.. off.Select(o => Bench.Read(1000 * Math.Exp(o)))]));
        var fine = Of(Bench.Run(5000, [.. off.Select(o => Bench.Read(1000 * Math.Exp(o / 10)))]));
        Assert.InRange(rough.Repeatability, 0.08, 0.14);
        Assert.InRange(fine.Repeatability, 0.01, 0.035);
    }

    /// <summary>
    /// The doubt of the temperature coefficient is one for all readings: a dozen of them 8 K away leave the body at the reference as open
    /// as the coefficient is, while a dozen at the reference leave next to nothing open.
    /// </summary>
    [Fact]
    public void Many_readings_at_one_wrong_temperature_leave_the_doubt_of_the_coefficient()
    {
        Entry[] Twelve(double celsius) => [.. Enumerable.Repeat(Bench.Read(1000, celsius: celsius), 12)];
        var (away, there) = (Width(Of(Bench.Run(5000, Twelve(31)))), Width(Of(Bench.Run(5000, Twelve(23)))));
        var distance = (1 / 296.15) - (1 / 304.15);
        // 90 % of the default coefficient lie between 2000·e^(−0.765) and 2000·e^0.765 K.
        Assert.Equal(distance * 2000 * (Math.Exp(0.765) - Math.Exp(-0.765)), away, 0.06);
        Assert.True(there < 0.3 * away);

        static double Width(Posterior posterior)
        {
            var body = posterior.BodyAt(Dose.None, Level);
            return body.High.Ln - body.Low.Ln;
        }
    }

    [Fact]
    public void Repeat_readings_sharpen_the_body()
    {
        var once = Of(Bench.Run(5000, Bench.Read(1000)));
        var thrice = Of(Bench.Run(5000, Bench.Read(1000), Bench.Read(1020), Bench.Read(985)));
        Assert.True(Width(thrice) < 0.7 * Width(once));

        static double Width(Posterior posterior)
        {
            var body = posterior.BodyAt(Dose.None, Level);
            return body.High.Ln - body.Low.Ln;
        }
    }

    [Theory]
    [InlineData(1000, 1010, 990, 2500)]
    [InlineData(2500, 1000, 1010, 990)]
    [InlineData(1000, 400, 1010, 990)]
    public void One_reading_far_off_its_repeats_moves_the_body_little(double first, double second, double third, double fourth)
    {
        var posterior = Of(Bench.Run(5000, Bench.Read(first), Bench.Read(second), Bench.Read(third), Bench.Read(fourth)));
        Assert.InRange(posterior.BodyAt(Dose.None, Level).Median.MilliPascalSeconds, 970, 1040);
    }

    /// <summary>
    /// An outlier counts with a spread of 0.5 in ln: of a base that an earlier run knows to s, it moves the body by s²/(s² + 0.04² + 0.5²)
    /// of its distance. A blunder, ten times off and more, counts for nothing.
    /// </summary>
    [Theory]
    [InlineData(1.0, 0.25)]
    [InlineData(2.5, 350)]
    [InlineData(-7, 1e9)]
    public void A_reading_far_from_all_that_was_known_counts_as_an_outlier_or_for_nothing(double off, double variance)
    {
        var prior = Of(Bench.AlongSigmoid(9000, 0.5), Bench.AlongSigmoid(9000, 0.4, 0.6, 0.6)).Prior;
        var known = prior.LevelSd * prior.LevelSd;
        var far = prior.LevelMean + off;
        var run = Bench.Run(9000, Bench.Read(Math.Exp(far))) with { Repeatability = Percentage.FromPercent(4) };
        var posterior = Posteriors.Under(Of(run).Evidence, prior, null);
        var moved = posterior.BodyAt(Dose.None, Level).Median.Ln - prior.LevelMean;
        Assert.Equal(off * known / (known + (posterior.Repeatability * posterior.Repeatability) + variance), moved, 0.02);
    }

    /// <summary>Two doses so near each other share their level: the body between them is known no better than at either.</summary>
    [Fact]
    public void Between_two_doses_that_lie_close_nothing_is_surer_than_at_them()
    {
        var posterior = Of(Bench.Run(9000, Bench.Read(1000), Bench.Dose(1.5), Bench.Read(2500), Bench.Dose(0.002), Bench.Read(2500)));
        var (at, between) = (posterior.At(Dose.FromPercent(1.5)), posterior.At(Dose.FromPercent(1.501)));
        Assert.Equal(1, Width(between) / Width(at), 0.02);

        static double Width(LnEstimate body) => body.Quantile(0.95) - body.Quantile(0.05);
    }

    /// <summary>
    /// A reading at no standing time shows the pot as it was before the dose. What the level has walked over that dose, w, is then noise of
    /// the reading as well: from the base's variance p and the reading's r the level keeps (p + w)(r + w)/(p + r + 2w).
    /// </summary>
    [Fact]
    public void A_reading_at_no_standing_time_tells_of_the_dose_before()
    {
        const double level = PosteriorSettings.BaseLogSd * PosteriorSettings.BaseLogSd;
        var posterior = Of(Bench.Run(9000, Bench.Read(1000), Bench.Dose(5), Bench.Read(1000, wait: 0)));
        (double Left, double Walked, double R)[] levels =
        [
            .. posterior.Bodies.Cast<CurveDraw>()
                .Select(c => (c.Level(1).Variance, c.Level(2).Variance - c.Level(1).Variance, c.Repeatability * c.Repeatability)),
        ];
        Assert.Contains(levels, l => l.Walked > l.R);
        Assert.All(levels, l =>
        {
            var p = level * l.R / (level + l.R);
            Assert.Equal((p + l.Walked) * (l.R + l.Walked) / (p + l.R + (2 * l.Walked)), l.Left, 1e-3 * l.Left);
        });
    }

    /// <summary>
    /// A curve that never comes up to the aim counts 0.15; before any dose, one that does so below the usual range counts 0.25. Where that
    /// is every curve, the readings are so much less likely.
    /// </summary>
    [Fact]
    public void Curves_that_nobody_would_choose_a_thickener_for_count_for_less()
    {
        var (dosed, undosed) = (Of(Bench.AlongSigmoid(9000, 0.5, 0.5)).Evidence, Of(Bench.Run(9000, Bench.Read(1000))).Evidence);
        Assert.Equal(0.15, Less(dosed, 1e100), 1e-5);
        Assert.Equal(0.25, Less(undosed, 1), 1e-5);
        Assert.Equal(1, Less(dosed, 1), 1e-9);
        static double Less(Evidence evidence, double target)
            => Math.Exp(Under(evidence, Bench.Run(target).Target!.Band).LogEvidence - Under(evidence, null).LogEvidence);
        static SampledCurves Under(Evidence evidence, ViscosityBand? band)
            => new(evidence, evidence.RangeTop, Prior.Common, band, SamplingEffort.Full);
    }

    [Fact]
    public void The_unit_of_dose_does_not_matter()
    {
        // The same curve on a thickener used at a tenth of the dose: everything believed scales with it.
        var usual = Of(Bench.AlongSigmoid(9000, 0.5, 0.7, 0.6));
        var strong = Bench.Thickener with { UsualRange = new(Dose.FromPercent(0.1), Dose.FromPercent(0.5)) };
        var run = usual.Evidence.Run;
        var scaled = Of(run with
        {
            Thickeners = [strong],
            Entries = [.. run.Entries.Select(e => e is Entry.Dosed d ? d with { Poured = Mass.FromGrams(d.Poured.Grams / 10) } : e)],
        });
        Assert.Equal(
            usual.BodyAt(Dose.FromPercent(2.4), Level).Median.Ln,
            scaled.BodyAt(Dose.FromPercent(0.24), Level).Median.Ln,
            1e-6);
    }

    [Fact]
    public void Earlier_runs_of_the_same_base_sharpen_the_forecast()
    {
        var run = Bench.AlongSigmoid(9000, 0.5);
        var earlier = Bench.AlongSigmoid(9000, 0.4, 0.6, 0.6, 0.5, 0.3);
        var (cold, warm) = (Of(run), Of(run, earlier, earlier with { Name = "another" }));
        Assert.Equal(2, warm.Prior.Runs);
        var (before, after) = (cold.BodyAt(Dose.FromPercent(2), Level), warm.BodyAt(Dose.FromPercent(2), Level));
        Assert.True(after.High.Ln - after.Low.Ln < 0.7 * (before.High.Ln - before.Low.Ln));
        Assert.InRange(Bench.Sigmoid(2), after.Low.MilliPascalSeconds, after.High.MilliPascalSeconds);
    }

    [Fact]
    public void A_history_of_another_base_is_left_aside()
    {
        var earlier = Bench.AlongSigmoid(9000, 0.4, 0.6, 0.6) with { Base = new("another") };
        Assert.Equal(0, Of(Bench.AlongSigmoid(9000, 0.5), earlier).Prior.Runs);
    }

    private static Posterior Of(Run run, params Run[] history)
        => ((PosteriorOutcome.Found)Posteriors.OfCurve(run, run.Target?.Band, [.. history])).Posterior;
}
