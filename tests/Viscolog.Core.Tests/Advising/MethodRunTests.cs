using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Advising;

/// <summary>Runs by every method: their readings become bodies, and what can't be mixed is refused.</summary>
public sealed class MethodRunTests
{
    private static readonly MethodSetup Setup = new()
    {
        PerPercentTorque = Viscosity.FromMilliPascalSeconds(200),
        BallDiameter = Length.FromMillimeters(3),
        BallDensity = Density.FromGramsPerMilliliter(7.8),
        Fall = Length.FromMillimeters(100),
        JarDiameter = Length.FromMillimeters(60),
        CylinderHeight = Length.FromMillimeters(100),
    };

    /// <summary>
    /// What the instrument shows at doses 0, 0.5 and 1 %, and the bodies that it means, worked out apart from the program.
    /// </summary>
    public static TheoryData<string, double[], double> Shown => new()
    {
        { "iso-2431-4", [30, 40, 62], 1.1 * ((1.37 * 62) - (200.0 / 62)) },
        { "d4212-44ml-3", [22, 30, 45], 1.1 * 11.7 * (45 - 7.5) },
        { "krebs", [70, 76, 85], 1000 },
        { "rotational", [12, 20, 41], 200 * 41 },
        { "falling-ball", [30, 60, 120], 1e3 * 6700 * 9.80665 * 9e-6 * 0.895057 * 120 / (18 * 0.1) },
        { "slump", [80, 70, 50], 1e3 * 0.0933412 * 1100 * 9.80665 * 0.1 },
    };

    [Theory]
    [MemberData(nameof(Shown))]
    public void A_run_by_any_method_gets_advice_in_its_own_repeatability(string id, double[] shown, double body)
    {
        var run = Of(id, shown, 1.6 * body);
        var advised = Studied.Of(new(run));
        Assert.IsType<BenchAction.Add>(advised.Advice!.Action);
        Assert.Equal(run.MethodInForce.Repeatability, run.RepeatabilityInForce);
        Assert.Equal(1, advised.Advice!.Body.Now!.Median.MilliPascalSeconds / body, 0.12);
        Assert.Equal(3, RunPictures.Of(advised.Posterior, null, null, Study.Level).Readings.Length);
        Assert.Equal(1, RunPictures.Of(advised.Posterior, null, null, Study.Level).Readings[^1].Value.MilliPascalSeconds / body, 1e-3);
    }

    [Fact]
    public void Torques_at_different_speeds_are_no_curve()
    {
        var run = Of("rotational", [12, 20, 41], 9000);
        var mixed = run with { Entries = [.. run.Entries.SkipLast(1), Read(new InstrumentValue.Torque(Percentage.FromPercent(41), 50))] };
        var refused = Assert.IsType<StudyOutcome.Refused>(Study.Of(new(mixed)));
        Assert.Equal([20, 50], Assert.IsType<EvidenceTrouble.MixedConditions>(refused.Reason)
            .Conditions.Select(c => c.RevolutionsPerMinute!.Value));
    }

    [Fact]
    public void A_void_reading_at_another_speed_mixes_nothing()
    {
        var run = Of("rotational", [12, 20, 41], 9000);
        var other = Read(new InstrumentValue.Torque(Percentage.FromPercent(80), 50)) with { VoidReason = "wrong speed" };
        Studied.Of(new(run with { Entries = [.. run.Entries, other] }));
    }

    [Fact]
    public void A_last_reading_outside_the_cups_limits_is_refused_with_the_cup_that_fits()
    {
        var refused = Assert.IsType<StudyOutcome.Refused>(Study.Of(new(Of("iso-2431-4", [30, 40, 115], 200))));
        var nothing = Assert.IsType<EvidenceTrouble.NothingConverted>(refused.Reason);
        Assert.True(nothing.IsByCup);
        Assert.Equal("iso-2431-5", Assert.IsType<ConversionRefusal.OutsideCup>(nothing.Reason).Instead!.Id);
    }

    [Fact]
    public void A_target_that_the_cup_can_not_tell_is_warned_of_with_the_cup_that_fits()
    {
        Assert.Equal("iso-2431-6", Beyond(600)!.Instead!.Id);
        Assert.Null(Beyond(60_000)!.Instead);
        Assert.Null(Beyond(120));
        static EvidenceWarning.TargetBeyondCup? Beyond(double target) => Studied.Of(new(Of("iso-2431-4", [32, 40, 50], target)))
            .Evidence.Warnings.OfType<EvidenceWarning.TargetBeyondCup>().SingleOrDefault();
    }

    [Fact]
    public void Torques_of_another_spindle_teach_nothing()
    {
        var run = Of("rotational", [12, 20, 41], 9000);
        var other = run with { Setup = Setup with { PerPercentTorque = Viscosity.FromMilliPascalSeconds(500) } };
        Assert.True(ShearConditions.Agree(run, run));
        Assert.False(ShearConditions.Agree(run, other));
    }

    [Fact]
    public void An_earlier_reading_outside_the_limits_is_left_out_with_a_warning()
    {
        var advised = Studied.Of(new(Of("iso-2431-4", [22, 40, 62], 200)));
        Assert.Equal(2, advised.Posterior.Evidence.ReadingCount);
        var left = Assert.Single(advised.Evidence.Warnings.OfType<EvidenceWarning.LeftOut>());
        Assert.Equal((1, 22), (left.Readings, Assert.IsType<ConversionRefusal.OutsideCup>(left.Last).Time.TotalSeconds));
    }

    /// <summary>
    /// 22 s of a dip cup whose t₀ is 14 s scatter twice as much in viscosity as its middle does; a repeatability that is stated stands as
    /// it is.
    /// </summary>
    [Theory]
    [InlineData(null, 1)]
    [InlineData(5.0, 0)]
    public void A_reading_at_the_steep_end_of_a_cup_counts_for_less(double? stated, int more)
    {
        var run = Of("d4212-44ml-2", [22, 30, 60], 400)
            with
        { Repeatability = stated is { } percent ? Percentage.FromPercent(percent) : null };
        var readings = Studied.Of(new(run)).Posterior.Evidence.Steps.SelectMany(s => s.Readings).Select(r => r.ExtraVariance).ToArray();
        double Stopwatch(double seconds) => 0.2 / (seconds - 14);
        double Scatter(double seconds) => 0.037 * seconds / (seconds - 14);
        var middle = Scatter(Math.Sqrt(20 * 80.0));
        Assert.Equal(Math.Pow(Stopwatch(22), 2) + (more * (Math.Pow(Scatter(22), 2) - Math.Pow(middle, 2))), readings[0], 1e-9);
        Assert.Equal(Math.Pow(Stopwatch(60), 2), readings[2], 1e-9);
    }

    [Fact]
    public void Earlier_runs_by_another_method_teach_nothing()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 0.7) with { Base = new("B") };
        var same = Bench.AlongSigmoid(9000, 0.5, 0.7, 0.6) with { Base = new("B") };
        var other = same with { Method = Method.Find("rotational") };
        Assert.Equal(1, Studied.Of(new(run) { History = [same] }).Posterior.Prior.Runs);
        Assert.Equal(0, Studied.Of(new(run) { History = [other] }).Posterior.Prior.Runs);
    }

    [Fact]
    public void The_same_method_at_another_temperature_is_corrected_with_what_the_run_teaches()
    {
        // The base at 18 and 28 °C tells 6000 K; the last reading at 28 °C then stands for more at 23 °C.
        static double At(double body, double celsius) => body * Math.Exp(6000 * ((1 / (celsius + 273.15)) - (1 / 296.15)));
        var run = Bench.Run(
            9000, Bench.Read(At(1000, 18), celsius: 18), Bench.Read(At(1000, 28), celsius: 28), Bench.Dose(1), Bench.Read(At(2000, 23)),
                Bench.Dose(0.5), Bench.Read(At(3000, 28), celsius: 28));
        var advised = Studied.Of(new(run with { Repeatability = Percentage.FromPercent(1) }));
        Assert.Equal(3000, advised.Posterior.BodyAt(Dose.FromPercent(1.5), Study.Level).Median.MilliPascalSeconds, 100.0);
        Assert.Equal(CoefficientOrigin.Learned, Assert.Single(advised.Evidence.Warnings.OfType<EvidenceWarning.Corrected>()).By.Origin);
    }

    [Fact]
    public void A_stated_coefficient_is_used_as_stated()
    {
        var run = Bench.Run(9000, Bench.Read(1000, celsius: 28))
            with
        { Setup = new() { TemperatureCoefficient = TemperatureCoefficient.Stated(5000) } };
        var posterior = Studied.Of(new(run)).Posterior;
        var expected = 1000 * Math.Exp(5000 * ((1 / 296.15) - (1 / 301.15)));
        Assert.Equal(1, RunPictures.Of(posterior, null, null, Study.Level).Readings[0].Value.MilliPascalSeconds / expected, 1e-9);
    }

    private static Run Of(string id, double[] shown, double target)
    {
        var method = Method.Find(id)!;
        var entries = ImmutableArray.CreateBuilder<Entry>();
        for (var i = 0; i < shown.Length; i++)
        {
            if (i > 0)
            {
                entries.Add(Bench.Dose(0.5));
            }

            entries.Add(Read(Value(method, shown[i])));
        }

        return Bench.Run(target) with
        {
            Base = new("B", Density.FromGramsPerMilliliter(1.1)),
            Method = method,
            Setup = Setup,
            Entries = entries.ToImmutable(),
        };
    }

    private static Entry.Measured Read(InstrumentValue value)
        => new(new Reading { Value = value, Temperature = Temperature.FromCelsius(23) });

    private static InstrumentValue Value(Method method, double shown) => method.Scales[0].Make(shown, 20);
}
