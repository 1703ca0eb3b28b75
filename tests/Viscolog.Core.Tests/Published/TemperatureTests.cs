using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Published;

/// <summary>The temperature correction against published viscosities of liquids.</summary>
public sealed class TemperatureTests
{
    /// <summary>The scatter that the program takes where none is stated.</summary>
    private static readonly Percentage Usual = Method.Find("direct")!.Repeatability;

    /// <summary>Water at 0.1 MPa in mPa·s, IAPWS 2008 (values seen in a public table).</summary>
    private static readonly (double Celsius, double Viscosity)[] Water =
        [(13, 1.2005), (15, 1.1375), (18, 1.0526), (20, 1.0016), (23, 0.9321), (25, 0.89), (28, 0.8324), (30, 0.7972), (33, 0.7488)];

    [Fact]
    public void Water_is_brought_to_23_degrees_by_the_default_within_what_it_states()
    {
        foreach (var (celsius, viscosity) in Water)
        {
            var (shift, sd) = TemperatureCorrection.LnShift(Temperature.FromCelsius(celsius), Temperature.FromCelsius(23));
            var off = Math.Log(viscosity) + shift - Math.Log(0.9321);
            Assert.True(Math.Abs(off) <= (2 * sd) + 1e-9, FormattableString.Invariant($"{celsius} °C: off by {off}"));
            Assert.True(Math.Abs(off) < 0.02, FormattableString.Invariant($"{celsius} °C: off by {off}"));
        }
    }

    [Fact]
    public void Water_is_brought_to_23_degrees_by_a_learned_coefficient_within_1_and_a_half_per_cent()
        => AssertReached(Learned(Water), Water, 23, 0.9321, 0.015);

    /// <summary>60 % sucrose: Bingham and Jackson, Bull. Bur. Standards 14 (1918) 59; values solved from their equation.</summary>
    [Fact]
    public void Sucrose_syrup_needs_a_learned_coefficient()
    {
        (double, double)[] syrup = [.. Table.Read("D6_sucrose_BinghamJackson1918.csv").Where(r => r[0] is >= 15 and <= 30)
            .Select(r => (r[0], r[2]))];
        AssertReached(Learned(syrup), syrup, 20, 59.8084, 0.06);
        Assert.InRange(Learned(syrup).Kelvin, 4800, 6200);
    }

    /// <summary>
    /// Glycerol and water: Segur and Oberstar, Ind. Eng. Chem. 43 (1951) 2117. Pure glycerol bends on this scale, which sets the accuracy
    /// of one coefficient over 20 °C.
    /// </summary>
    [Theory]
    [InlineData(0.5, 0.03)]
    [InlineData(0.8, 0.04)]
    [InlineData(1, 0.08)]
    public void Glycerol_is_brought_to_20_degrees_by_a_learned_coefficient(double fraction, double within)
    {
        (double Celsius, double Viscosity)[] rows = [.. Table.Read("D2_glycerol_water_Segur1951.csv")
            .Where(r => r[1] == fraction && r[0] <= 30).Select(r => (r[0], r[2]))];
        AssertReached(Learned(rows), rows, 20, rows.Single(r => r.Celsius == 20).Viscosity, within);
    }

    /// <summary>
    /// A hydrocarbon blend: Byers and Williams (1987), as in Montgomery, Peck and Vining, Introduction to Linear Regression Analysis,
    /// problem 5.1.
    /// </summary>
    [Fact]
    public void Toluene_and_tetralin_are_brought_ten_degrees_within_1_per_cent()
    {
        (double Celsius, double Viscosity)[] rows = [.. Table.Read("D5_toluene_tetralin_Byers1987.csv").Where(r => r[0] < 60)
            .Select(r => (r[0], r[1]))];
        AssertReached(Learned(rows), rows, 35, 0.9772, 0.01);
    }

    /// <summary>
    /// Consistency K in Pa·sⁿ at 25, 35 and 45 °C with the authors' own activation energies (foodengprog.org, article fep-28-4-296, table
    /// 2, seen). They print K to three or four digits and an energy of their own fit, so 3 % is what can be asked.
    /// </summary>
    [Theory]
    [InlineData(32.54, 11.95, 8.71, 5.22)]
    [InlineData(36.38, 11.93, 7.72, 4.74)]
    [InlineData(39.64, 14.25, 9.05, 5.21)]
    public void Activation_energies_are_those_published(double kilojoules, params double[] consistency)
    {
        (double, double)[] rows = [.. consistency.Select((k, i) => (25.0 + (10 * i), 1000 * k))];
        Assert.InRange(Learned(rows, Percentage.FromPercent(0.001)).ActivationEnergy / kilojoules, 0.97, 1.03);
    }

    [Fact]
    public void Readings_under_5_degrees_apart_teach_nothing()
        => Assert.Null(TemperatureCoefficient.Learned([[(Temperature.FromCelsius(20), Of(10)), (Temperature.FromCelsius(24.9), Of(9))]],
            Usual));

    [Fact]
    public void Rough_readings_are_weighed_against_the_default()
    {
        (Temperature, Viscosity)[] two = [(Temperature.FromCelsius(18), Of(1200)), (Temperature.FromCelsius(28), Of(700))];
        var rough = TemperatureCoefficient.Learned([two], Percentage.FromPercent(10))!;
        var sure = TemperatureCoefficient.Learned([two], Percentage.FromPercent(1))!;
        Assert.InRange(rough.Kelvin, 2000, sure.Kelvin);
        Assert.InRange(rough.SdKelvin, sure.SdKelvin, 1.3 * TemperatureCorrection.DefaultCoefficientSd);
    }

    /// <summary>
    /// Two readings of 60 % sucrose 10 °C apart (Bingham and Jackson 1918), with the scatter that the program takes where none is stated:
    /// they put the coefficient at 5500 K to 1000 K, and the default does not draw it down by more than a part of that.
    /// </summary>
    [Fact]
    public void A_high_coefficient_is_not_drawn_to_the_default_beyond_what_the_readings_leave_open()
    {
        (double Celsius, double Viscosity)[] rows =
        [
            .. Table.Read("D6_sucrose_BinghamJackson1918.csv").Where(r => r[0] is 15 or 25).Select(r => (r[0], r[2])),
        ];
        var slope = Math.Log(rows[0].Viscosity / rows[1].Viscosity) / ((1 / (rows[0].Celsius + 273.15)) - (1 / (rows[1].Celsius + 273.15)));
        var learned = Learned(rows);
        Assert.InRange(slope, 5000, 6500);
        Assert.InRange(learned.Kelvin, slope - 600, slope);
        Assert.InRange(learned.SdKelvin, 300, 600);
    }

    private static TemperatureCoefficient Learned((double Celsius, double Viscosity)[] rows, Percentage? repeatability = null)
        => TemperatureCoefficient.Learned([[.. rows.Select(r => (Temperature.FromCelsius(r.Celsius), Of(r.Viscosity)))]],
            repeatability ?? Usual)!;

    private static void AssertReached(TemperatureCoefficient coefficient, (double Celsius, double Viscosity)[] rows, double reference,
        double published, double within)
    {
        (double Celsius, double Viscosity)[] near = [.. rows.Where(r => r.Celsius != reference
            && Math.Abs(r.Celsius - reference) <= TemperatureCorrection.GreatestDistance)];
        Assert.NotEmpty(near);
        Assert.All(near, row =>
        {
            var (shift, _) = TemperatureCorrection.LnShift(Temperature.FromCelsius(row.Celsius), Temperature.FromCelsius(reference),
                coefficient);
            Assert.Equal(0, Math.Log(row.Viscosity) + shift - Math.Log(published), within);
        });
    }

    private static Viscosity Of(double value) => Viscosity.FromMilliPascalSeconds(value);
}
