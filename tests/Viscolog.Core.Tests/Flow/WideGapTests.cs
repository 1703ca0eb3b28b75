using System.Collections.Immutable;
using Viscolog.Core.Flow;
using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Flow;

/// <summary>
/// Yield-stress fluids in a wide gap, where a layer next to the bob may flow alone: torques worked out apart from the program, Ω =
/// ½∫γ(τ)/τ dτ from the stress at the cup, or the yield stress, to that at the bob (Krieger and Elrod 1953; for Bingham's law in closed
/// form Reiner and Riwlin 1927; both from memory).
/// </summary>
public sealed class WideGapTests
{
    private static readonly double[] Speeds = [0.5, 1, 2, 4, 8, 15, 30, 60, 100];

    /// <summary>Ratio of cup and bob (infinite for none), yield stress, consistency, index.</summary>
    public static TheoryData<double, Law> Fluids => new()
    {
        { 2, new(20, 0.5, 1) },
        { double.PositiveInfinity, new(20, 0.5, 1) },
        { 2, new(10, 5, 0.5) },
        { double.PositiveInfinity, new(20, 8, 0.4) },
    };

    /// <summary>A scatter of 1e-8: with none the least squares are rounding alone, and no minimum of them can be vouched for.</summary>
    [Theory]
    [MemberData(nameof(Fluids))]
    public void Torques_with_next_to_no_scatter_give_back_the_law_that_made_them(double ratio, Law law)
    {
        var curve = Curve(ratio, law, 1e-8, 1);
        var fit = Fit(curve, law);
        double[] truth = law.Index == 1 ? [law.Yield, law.Consistency] : [law.Yield, law.Consistency, law.Index];
        Assert.All(fit.Parameters.Zip(truth), p => Assert.Equal(1, p.First.Value / p.Second, 2e-6));
        Assert.All(curve.Points, p => Assert.Equal(1, p.Stress.Pascals / law.Stress(p.Rate.PerSecond), 1e-5));
        Assert.True(fit.Weight > 0.9);
    }

    /// <summary>
    /// With 1 % of scatter a 90 % interval has to hold the true viscosity about 16 times in 18 (three rates, six series), 13 at least;
    /// fitted to rates by the local power law, the usual way, it held Bingham's at the greatest rate not once, which came out 12 to 17 %
    /// too low.
    /// </summary>
    [Theory]
    [MemberData(nameof(Fluids))]
    public void Stated_intervals_hold_the_true_viscosity(double ratio, Law law)
    {
        var held = 0;
        for (var seed = 1; seed <= 6; seed++)
        {
            var curve = Curve(ratio, law, 0.01, seed);
            var (least, most) = (1.01 * curve.LeastRate.PerSecond, 0.99 * curve.MostRate.PerSecond);
            foreach (var rate in new[] { least, Math.Sqrt(least * most), most })
            {
                var stated = curve.At(new(null, ShearRate.FromPerSecond(rate)))!.Value;
                var truth = 1000 * law.Stress(rate) / rate;
                held += truth >= stated.Low.MilliPascalSeconds && truth <= stated.High.MilliPascalSeconds ? 1 : 0;
                Assert.Equal(1, stated.Median.MilliPascalSeconds / truth, 0.06);
            }

            Assert.InRange((Fit(curve, law).Parameters[0].Value - law.Yield) / Fit(curve, law).Parameters[0].StandardError!.Value, -3.5,
                3.5);
        }

        Assert.InRange(held, 13, 18);
    }

    /// <summary>
    /// Reiner and Riwlin's equation (1927, from memory): Ω = (τb − τc)/(2η) − τ₀/(2η)·ln(τb/τc), τc the stress at the cup, or τ₀ where
    /// that is greater.
    /// </summary>
    [Theory]
    [InlineData(1.1, 0.8)]
    [InlineData(2, 0.8)]
    [InlineData(2, 40)]
    [InlineData(double.PositiveInfinity, 3)]
    public void A_Bingham_fluid_turns_the_bob_as_Reiner_and_Riwlin_have_it(double ratio, double rate)
    {
        var (yield, plastic) = (20.0, 0.5);
        var atBob = yield + (plastic * rate);
        var atCup = Math.Max(yield, atBob / (ratio * ratio));
        var speed = (atBob - atCup - (yield * Math.Log(atBob / atCup))) / (2 * plastic);
        var found = new GapProfile(ratio).RateAtBob(FlowModel.All.Single(m => m.Name == "bingham"), [yield, Math.Log(plastic)], speed, 1);
        Assert.Equal(1, found / rate, 1e-6);
    }

    /// <summary>
    /// No steady flow has a torque that falls as the speed grows: no law can turn the bob so, and the figures are shown and warned of all
    /// the same.
    /// </summary>
    [Fact]
    public void Falling_torques_are_judged_by_their_rates_at_first_sight()
    {
        var cylinder = new Geometry.ConcentricCylinder(Length.FromMillimeters(10), Length.FromMillimeters(20), Length.FromMillimeters(40));
        ImmutableArray<TorqueReading> readings = [.. Speeds.Select(rpm
            => new TorqueReading(rpm, Percentage.FromPercent(60 * Math.Pow(rpm, -0.1))))];
        var series = new TorqueSeries(cylinder, Torque.FromNewtonMeters(0.05), readings);
        var curve = FlowCurve.Of(series, FlowWeights.Relative);
        Assert.Equal(series.ToPoints().Select(p => p.Rate), curve.Points.Select(p => p.Rate));
        Assert.Equal(-0.1, curve.Fits.Single(f => f.Model.Name == "power-law").Parameters[1].Value, 1e-6);
        Assert.Contains(curve.Warnings, w => w is FlowWarning.StressFalls);
        Assert.Contains(series.Warnings, w => w is FlowWarning.FlatTorques);
    }

    private static FlowFit Fit(FlowCurve curve, Law law)
        => curve.Fits.Single(f => f.Model.Name == (law.Index == 1 ? "bingham" : "herschel-bulkley"));

    private static FlowCurve Curve(double ratio, Law law, double scatter, int seed)
    {
        var random = new Random(seed);
        double Noise() => scatter * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var bob = Length.FromMillimeters(10);
        var cylinder = new Geometry.ConcentricCylinder(bob, double.IsInfinity(ratio) ? null : Length.FromMillimeters(10 * ratio),
            Length.FromMillimeters(40));
        var fullScale = 1.2 * law.StressAt(2 * Math.PI * Speeds[^1] / 60, ratio) / cylinder.StressPerTorque(1);
        ImmutableArray<TorqueReading> readings = [.. Speeds.Select(rpm => new TorqueReading(rpm, Percentage.FromFraction(
            law.StressAt(2 * Math.PI * rpm / 60, ratio) * Math.Exp(Noise()) / cylinder.StressPerTorque(1) / fullScale)))];
        return FlowCurve.Of(new TorqueSeries(cylinder, Torque.FromNewtonMeters(fullScale), readings), FlowWeights.Relative);
    }

    /// <summary>τ = τ₀ + Kγⁿ.</summary>
    public sealed record Law(double Yield, double Consistency, double Index)
    {
        public double Stress(double rate) => Yield + (Consistency * Math.Pow(rate, Index));

        public double StressAt(double speed, double ratio)
        {
            var (low, high) = (Yield + 1e-12, 1e6);
            for (var i = 0; i < 200; i++)
            {
                var middle = Math.Sqrt(low * high);
                (low, high) = Speed(middle, ratio) < speed ? (middle, high) : (low, middle);
            }

            return Math.Sqrt(low * high);
        }

        public double Speed(double atBob, double ratio)
        {
            var atCup = Math.Max(Yield, atBob / (ratio * ratio));
            if (atCup >= atBob)
            {
                return 0;
            }

            // Simpson in τ, the ends crowded at the yield stress, where γ rises like a power.
            const int n = 400;
            double Of(double u)
            {
                var stress = atCup + ((atBob - atCup) * u * u * u);
                return Math.Pow((stress - Yield) / Consistency, 1 / Index) / stress * 3 * u * u * (atBob - atCup);
            }

            var sum = Of(1);
            for (var i = 1; i < n; i++)
            {
                sum += Of((double)i / n) * (i % 2 == 1 ? 4 : 2);
            }

            return sum / 3 / n / 2;
        }
    }
}
