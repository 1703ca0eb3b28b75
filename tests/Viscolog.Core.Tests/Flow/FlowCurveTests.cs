using System.Collections.Immutable;
using CsCheck;
using Viscolog.Core.Flow;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Flow;

/// <summary>What a flow curve tells and what it owns not to know.</summary>
public sealed class FlowCurveTests
{
    private static readonly double[] Rates = [0.5, 1, 2, 5, 10, 20, 50, 100];
    private static readonly double[] Scatter = [1.01, 0.985, 1.012, 0.995, 1.004, 0.99, 1.013, 0.992];

    [Fact]
    public void A_yield_stress_that_the_data_do_not_show_is_an_upper_limit()
    {
        var fit = Fit("herschel-bulkley", r => 5 * Math.Pow(r, 0.5));
        var yield = fit.Parameters[0];
        Assert.NotNull(yield.UpperLimit);
        Assert.InRange(yield.UpperLimit.Value, 0.01, 1.5);
        Assert.True(yield.Value < yield.UpperLimit);
        Assert.Null(Fit("herschel-bulkley", r => 8 + (5 * Math.Pow(r, 0.5))).Parameters[0].UpperLimit);
    }

    [Theory]
    [InlineData("bingham")]
    [InlineData("casson")]
    public void A_Newtonian_liquid_has_no_yield_stress_by_any_law(string law)
        => Assert.NotNull(Fit(law, r => 2 * r).Parameters[0].UpperLimit);

    /// <summary>
    /// A yield stress is told from none where it lies further from 0 than Student's t at 97.5 %, with 6 degrees of freedom 2.447 standard
    /// errors (NIST/SEMATECH e-Handbook, 1.3.6.7.2). Casson's is judged as its root, of which it is the square: 2.447 of the root are
    /// 1.22 of the stress.
    /// </summary>
    [Theory]
    [InlineData("bingham", 0.0257, 0.0264, 2.447)]
    [InlineData("casson", 0.0303, 0.0312, 1.2235)]
    public void A_yield_stress_is_told_from_none_by_Students_t(string law, double small, double large, double errors)
    {
        var (under, over) = (Fit(law, r => small + (2 * r)).Parameters[0], Fit(law, r => large + (2 * r)).Parameters[0]);
        Assert.True(under is { Value: 0, StandardError: null, UpperLimit: > 0 });
        Assert.InRange(over.Value / over.StandardError!.Value / errors, 1, 1.05);
        Assert.Null(over.UpperLimit);
    }

    /// <summary>The last plateau likewise: with 4 degrees of freedom from 2.776 standard errors on (the same table).</summary>
    [Fact]
    public void A_last_plateau_is_told_from_none_by_Students_t()
    {
        FlowParameter Last(double size) => Fit("cross", r => r * (size + (40 / (1 + Math.Pow(0.4 * r, 0.9)))))
            .Parameters.Single(p => p.Name == "infinite_shear_pas");
        Assert.True(Last(0.352) is { Value: 0, UpperLimit: > 0 });
        Assert.InRange(Last(0.366).Value / Last(0.366).StandardError!.Value, 2.776, 2.9);
    }

    /// <summary>
    /// τ = τ₀ + ηγ weighted by 1/τ is a straight line, worked here by the normal equations; 95 % lie below the value and 1.943 standard
    /// errors (Student's t with 6 degrees of freedom, NIST/SEMATECH e-Handbook, 1.3.6.7.2). By the normal distribution, 1.645, the limit
    /// would be a seventh too low.
    /// </summary>
    [Fact]
    public void An_upper_limit_is_that_of_Students_t()
    {
        double[] stresses = [.. Rates.Select((r, i) => 2 * r * Scatter[i])];
        double Sum(Func<int, double> of) => Enumerable.Range(0, 8).Sum(i => of(i) / (stresses[i] * stresses[i]));
        var (w, x, xx, y, xy) = (Sum(_ => 1), Sum(i => Rates[i]), Sum(i => Rates[i] * Rates[i]), Sum(i => stresses[i]),
            Sum(i => Rates[i] * stresses[i]));
        var determinant = (w * xx) - (x * x);
        var (yield, plastic) = (((xx * y) - (x * xy)) / determinant, ((w * xy) - (x * y)) / determinant);
        var scatter = Math.Sqrt(Sum(i => Math.Pow(yield + (plastic * Rates[i]) - stresses[i], 2)) / 6);
        var limit = Math.Max(0, yield) + (1.943 * scatter * Math.Sqrt(xx / determinant));
        Assert.Equal(1, Fit("bingham", r => 2 * r).Parameters[0].UpperLimit!.Value / limit, 3e-4);
    }

    /// <summary>
    /// Where no yield stress is told, consistency and index are those of the power law, not of a fit about a yield stress below 0.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(-0.4)]
    public void Without_a_yield_stress_Herschel_and_Bulkleys_law_is_the_power_law(double bend)
    {
        double Stress(double rate) => (5 * Math.Pow(rate, 0.5)) + bend;
        var (full, power) = (Fit("herschel-bulkley", Stress), Fit("power-law", Stress));
        Assert.True(full.Parameters[0] is { Name: "yield_stress_pa", Value: 0, UpperLimit: > 0 });
        Assert.Equal(power.Parameters[0].Value, full.Parameters[1].Value, 1e-6);
        Assert.Equal(power.Parameters[1].Value, full.Parameters[2].Value, 1e-7);
        Assert.True(full.Weight < power.Weight);
    }

    [Fact]
    public void A_last_plateau_that_the_data_do_not_show_is_taken_as_none()
    {
        var fit = Fit("cross", r => 40 * r / (1 + Math.Pow(0.4 * r, 0.9)));
        var last = fit.Parameters.Single(p => p.Name == "infinite_shear_pas");
        Assert.Equal(0, last.Value);
        Assert.Equal(40, fit.Parameters[0].Value, 4.0);
    }

    [Fact]
    public void A_liquid_without_plateaus_gets_no_Cross_parameters_that_mean_nothing()
    {
        var fit = Fit("cross", r => 9 + (5 * Math.Pow(r, 0.5)));
        Assert.IsType<FlowTrouble.NoPlateaus>(fit.Trouble);
        Assert.Equal(0, fit.Weight);
    }

    [Fact]
    public void Weights_sum_to_1_and_the_simplest_sufficient_law_leads()
    {
        var curve = Curve(r => 2 * r);
        Assert.Equal(1, curve.Fits.Sum(f => f.Weight), 1e-9);
        Assert.Equal("newton", curve.Fits[0].Model.Name);
        Assert.Equal(1, curve.Index!.Value, 0.02);
    }

    [Fact]
    public void A_rate_outside_the_data_is_marked_and_less_sure()
    {
        var curve = Curve(r => 8 + (5 * Math.Pow(r, 0.5)));
        var (inside, outside) = (curve.At(new(null, ShearRate.FromPerSecond(30)))!, curve.At(new(null, ShearRate.FromPerSecond(1e4)))!);
        Assert.False(inside.IsOutside);
        Assert.True(outside.IsOutside);
        Assert.Equal(1000 * (8 + (5 * Math.Sqrt(30))) / 30, inside.Value.Median.MilliPascalSeconds, 25.0);
        Assert.True(Width(outside) > Width(inside));
        static double Width(RateViscosity at) => at.Value.High.Ln - at.Value.Low.Ln;
    }

    [Fact]
    public void The_thinning_index_is_the_ratio_over_ten_times_the_rate()
    {
        var index = Curve(r => 5 * Math.Pow(r, 0.5)).Index!;
        Assert.Equal(Math.Sqrt(10), index.Value, 0.1);
        Assert.False(index.IsOutside);
        var narrow = FlowCurve.Of(Points([10, 20, 40, 60], r => 5 * Math.Sqrt(r)), FlowWeights.Relative);
        Assert.True(narrow.Index!.IsOutside);
        Assert.Contains(narrow.Warnings, w => w is FlowWarning.NarrowRates);
    }

    [Fact]
    public void A_loop_is_the_area_between_the_ways()
    {
        double[] up = [1, 2, 5, 10];
        ImmutableArray<FlowPoint> points = [.. Points(up, r => 2 * r), .. Points([.. up.Reverse()], r => r)];
        var loop = FlowLoop.Find(points)!;
        Assert.Equal(49.5, loop.Area, 1e-9);
        Assert.Equal(0.5, loop.Part, 1e-9);
        Assert.Null(FlowLoop.Find(Points(up, r => r)));
    }

    [Fact]
    public void A_liquid_that_does_not_remember_has_no_loop_area()
        => Gen.Double[0.2, 1.2].Sample(n =>
        {
            ImmutableArray<FlowPoint> points = [.. Points(Rates, r => Math.Pow(r, n)),
                .. Points([.. Rates.Reverse()], r => Math.Pow(r, n))];
            Assert.Equal(0, FlowLoop.Find(points)!.Part, 1e-12);
        });

    [Fact]
    public void With_a_loop_the_way_down_is_fitted_and_it_says_so()
    {
        ImmutableArray<FlowPoint> points = [.. Points(Rates, r => 9 + (6 * Math.Sqrt(r))),
            .. Points([.. Rates.Reverse()], r => 8 + (5 * Math.Sqrt(r)))];
        var curve = FlowCurve.Of(points, FlowWeights.Relative);
        Assert.Equal(8, curve.Fitted.Length);
        Assert.Equal(8, curve.Fits[0].Parameters[0].Value, 0.01);
        Assert.Contains(curve.Warnings, w => w is FlowWarning.FittedToWayDown);
    }

    [Fact]
    public void Three_points_get_a_curve_and_a_warning_instead_of_weights()
    {
        var curve = FlowCurve.Of(Points([1, 10, 100], r => 2 * r), FlowWeights.Relative);
        Assert.All(curve.Fits, f => Assert.Equal(0, f.Weight));
        Assert.Contains(curve.Warnings, w => w is FlowWarning.TooFewToWeigh);
        Assert.Throws<ArgumentException>(() => FlowCurve.Of(Points([1, 10], r => r), FlowWeights.Relative));
    }

    [Fact]
    public void The_picture_holds_the_points_and_a_curve_in_rising_order()
    {
        var picture = FlowPicture.Of("x", Curve(r => 8 + (5 * Math.Sqrt(r))));
        Assert.Equal(Rates.Length, picture.Points.Length);
        Assert.Equal(picture.Curve.OrderBy(c => c.At.Rate).ToArray(), picture.Curve.ToArray());
        Assert.Equal("herschel-bulkley", picture.Best!.Model.Name);
    }

    [Fact]
    public void Scatter_on_a_flat_stretch_is_no_falling_stress()
        => Gen.Int[0, 1000].Sample(
            seed =>
            {
                var random = new Random(seed);
                ImmutableArray<FlowPoint> points = [.. Enumerable.Range(0, 40).Select(i => Math.Pow(10, -2 + (i / 10.0)))
                    .Select(r => new FlowPoint(ShearRate.FromPerSecond(r),
                        Stress.FromPascals((20 + (0.5 * r)) * (1 + (0.08 * (random.NextDouble() - 0.5))))))];
                Assert.Null(FallingStress.From(points));
            },
            iter: 200);

    /// <summary>
    /// Twelve stresses alike but for the last, which is lower by D in ln. One neighbour's middle is off by D/2, so the scatter is
    /// √(D²/4/10/1.5): the middle of two has half a point's variance. By hand, D = 0.05 + 3·√2·D·0.1291 gives 0.1106: less is scatter,
    /// more is a fall.
    /// </summary>
    [Theory]
    [InlineData(0.1085, false)]
    [InlineData(0.1127, true)]
    public void A_stress_falls_where_it_falls_by_more_than_the_points_scatter(double fall, bool isSeen)
    {
        var curve = FlowCurve.Of(Points([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12], r => 20 * Math.Exp(r < 12 ? 0 : -fall)),
            FlowWeights.Relative);
        Assert.Equal(isSeen, curve.Warnings.Any(w => w is FlowWarning.StressFalls));
    }

    [Fact]
    public void A_stress_that_rises_and_then_falls_is_found()
        => Assert.Equal(10, FallingStress.From(Points([1, 2, 5, 10, 20, 50, 100],
            r => r <= 10 ? 20 * Math.Pow(r, 0.3) : 40 * Math.Pow(10 / r, 0.4)))!.Value, 1e-9);

    [Fact]
    public void Any_points_get_an_answer()
        => Gen.Select(Gen.Double[-6, 6].Array[3, 9], Gen.Double[-6, 6].Array[9], Gen.Bool).Sample(
            (rates, stresses, relative) =>
            {
                ImmutableArray<FlowPoint> points = [.. rates.Select((r, i)
                    => new FlowPoint(ShearRate.FromPerSecond(Math.Pow(10, r)), Stress.FromPascals(Math.Pow(10, stresses[i]))))];
                var curve = FlowCurve.Of(points, relative ? FlowWeights.Relative : FlowWeights.None);
                Assert.Equal(7, curve.Fits.Length);
                Assert.All(curve.Fits.SelectMany(f => f.Parameters),
                    p => Assert.True(double.IsFinite(p.Value) && double.IsFinite(p.StandardError ?? 0)
                    && double.IsFinite(p.UpperLimit ?? 0)));
                Assert.True(double.IsFinite(curve.Index?.Value ?? 1));
                Assert.True(curve.Fits.Sum(f => f.Weight) is 0 or (> 0.999 and < 1.001));
                Assert.All(FlowPicture.Of(null, curve).Curve,
                    c => Assert.True(c.Value.Low <= c.Value.Median && c.Value.Median <= c.Value.High));
            },
            iter: 40,
            seed: "dwRLR49hIU16");

    private static FlowFit Fit(string law, Func<double, double> stress) => Curve(stress).Fits.Single(f => f.Model.Name == law);

    private static FlowCurve Curve(Func<double, double> stress)
        => FlowCurve.Of([.. Rates.Select((r, i) => new FlowPoint(ShearRate.FromPerSecond(r), Stress.FromPascals(stress(r) * Scatter[i])))],
            FlowWeights.Relative);

    private static ImmutableArray<FlowPoint> Points(double[] rates, Func<double, double> stress)
        => [.. rates.Select(r => new FlowPoint(ShearRate.FromPerSecond(r), Stress.FromPascals(stress(r))))];
}
