using CsCheck;
using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Measuring;

/// <summary>Checks of a method with a certified oil.</summary>
public sealed class MethodDriftTests
{
    private static readonly ShearCondition Krebs = new(Method.Find("krebs")!, null);
    private static readonly DateOnly Day = new(2026, 3, 2);
    private static readonly CertifiedOil Oil = new("oil 1000", Viscosity.FromMilliPascalSeconds(1000), Temperature.FromCelsius(25),
        Percentage.FromPercent(0.3));

    [Fact]
    public void A_bias_is_told_from_scatter_once_enough_readings_agree()
    {
        var one = Of(Read(1040, Day))!;
        var four = Of([.. Enumerable.Repeat(Read(1040, Day), 4)])!;
        Assert.False(one.IsBiased);
        Assert.True(four.IsBiased);
        Assert.Equal(Math.Log(1.04), four.LnBias, 1e-12);
        Assert.True(one.ForVerdicts > one.Uncertainty);
        Assert.True(four.Uncertainty < one.Uncertainty);
    }

    /// <summary>Two standard uncertainties, about 95 %: within them a bias may be scatter, beyond them it is taken out.</summary>
    [Theory]
    [InlineData(1.97, false)]
    [InlineData(2.03, true)]
    [InlineData(-1.97, false)]
    [InlineData(-2.03, true)]
    public void A_bias_is_told_from_none_beyond_two_standard_uncertainties(double uncertainties, bool isBiased)
    {
        var uncertainty = Of(Read(1000, Day))!.Uncertainty;
        var drift = Of(Read(1000 * Math.Exp(uncertainties * uncertainty.Fraction), Day))!;
        Assert.Equal(uncertainty.Percent, drift.Uncertainty.Percent, 1e-12);
        Assert.Equal(isBiased, drift.IsBiased);
    }

    [Fact]
    public void The_last_day_counts_and_the_change_since_the_day_before_is_told()
    {
        var drift = Of(Read(1000, Day), Read(1150, Day.AddDays(30)), Read(1150, Day.AddDays(30)))!;
        Assert.Equal(Math.Log(1.15), drift.LnBias, 1e-12);
        Assert.Equal(Math.Log(1.15), drift.Change!.Value, 1e-12);
        Assert.Equal(Day.AddDays(30), drift.LastChecked);
        Assert.False(drift.IsOld(Day.AddDays(40)));
        Assert.True(drift.IsOld(Day.AddDays(90)));
        Assert.Equal(31, drift.DaysSince(Day.AddDays(61)));
    }

    [Fact]
    public void Checks_that_agree_are_pooled_and_one_that_does_not_ends_them()
    {
        OilReading[] agreeing = [Read(1040, Day), Read(1045, Day.AddDays(10)), Read(1038, Day.AddDays(20))];
        var pooled = Of(agreeing)!;
        Assert.Equal((3, 3, Day, Day.AddDays(20)), (pooled.Readings, pooled.Days, pooled.Since, pooled.LastChecked));
        Assert.Equal(Math.Log(1040.0 * 1045 * 1038 / 1e9) / 3, pooled.LnBias, 1e-12);
        Assert.Equal(Math.Sqrt((0.003 * 0.003) + (0.03 * 0.03 / 3)), pooled.Uncertainty.Fraction, 1e-12);
        var moved = Of([Read(900, Day.AddDays(-2)), .. agreeing])!;
        Assert.Equal((3, Day), (moved.Readings, moved.Since));
        var shifted = Of([.. agreeing, Read(1250, Day.AddDays(21))])!;
        Assert.Equal((1, 1), (shifted.Readings, shifted.Days));
        Assert.Equal(Math.Log(1.25), shifted.LnBias, 1e-12);
        var old = Of(Read(1040, Day), Read(1040, Day.AddDays(32)))!;
        Assert.Equal((1, Day.AddDays(32)), (old.Readings, old.Since));
    }

    /// <summary>Whatever is added, as long as it agrees: the method is known no worse for it.</summary>
    [Fact]
    public void An_agreeing_check_never_makes_a_method_worse()
        => Gen.Select(Gen.Double[-0.02, 0.02], Gen.Double[20, 30], Gen.Int[0, 2], Gen.Int[0, 3]).Array[2, 8].Sample(all =>
        {
            CertifiedOil[] oils =
            [
                Oil,
                Oil with { Name = "oil 5000", Viscosity = Viscosity.FromMilliPascalSeconds(5000), Uncertainty = Percentage.FromPercent(2) },
                Oil with
                {
                    Name = "oil 200",
                    Viscosity = Viscosity.FromMilliPascalSeconds(200),
                    TemperatureCoefficient = TemperatureCoefficient.Stated(5000),
                },
            ];
            OilReading[] readings = [.. all.Select(a => new OilReading(
                Krebs,
                oils[a.Item3],
                Viscosity.FromLn(oils[a.Item3].Viscosity.Ln + a.Item1),
                Temperature.FromCelsius(a.Item2),
                Day.AddDays(a.Item4)))];
            var before = Of([.. readings.SkipLast(1)])!;
            var after = Of([.. readings.SkipLast(1), readings[^1] with { On = before.LastChecked }])!;
            if (after.Days >= before.Days)
            {
                Assert.True(after.Uncertainty.Fraction <= before.Uncertainty.Fraction + 1e-12);
            }
        });

    [Fact]
    public void An_oil_away_from_its_temperature_is_corrected_and_less_sure()
    {
        var oil = Oil with { TemperatureCoefficient = TemperatureCoefficient.Stated(5000) };
        var read = 1000 * Math.Exp(5000 * ((1 / 296.15) - (1 / 298.15)));
        var drift = Of(new OilReading(Krebs, oil, Viscosity.FromMilliPascalSeconds(read), Temperature.FromCelsius(23), Day))!;
        Assert.Equal(0, drift.LnBias, 1e-12);
        Assert.True(drift.Uncertainty > Of(Read(1000, Day))!.Uncertainty);
    }

    [Fact]
    public void Oils_read_by_another_method_say_nothing()
        => Assert.Null(MethodDrift.Of([Read(1000, Day)], new(Method.Find("rotational")!, 20), Percentage.FromPercent(3)));

    private static MethodDrift? Of(params OilReading[] readings) => MethodDrift.Of(readings, Krebs, Percentage.FromPercent(3));

    private static OilReading Read(double viscosity, DateOnly on)
        => new(Krebs, Oil, Viscosity.FromMilliPascalSeconds(viscosity), Temperature.FromCelsius(25), on);
}
