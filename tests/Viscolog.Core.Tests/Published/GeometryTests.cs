using System.Collections.Immutable;
using Viscolog.Core.Flow;
using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Published;

/// <summary>Geometries of rotational viscometers against worked examples.</summary>
public sealed class GeometryTests
{
    /// <summary>
    /// Bob shear rate over angular speed for a power law, (2/n)·α^(2/n)/(α^(2/n) − 1) (Krieger and Elrod 1953; form from memory), worked
    /// out apart from the program; a ratio of a million stands for a wide vessel.
    /// </summary>
    [Theory]
    [InlineData(1.0479, 1, 22.3885)]
    [InlineData(1.0479, 0.8, 22.6473)]
    [InlineData(1.0479, 0.5, 23.4353)]
    [InlineData(1.0479, 0.3, 24.8793)]
    [InlineData(1.0847, 1, 13.3267)]
    [InlineData(1.0847, 0.8, 13.5919)]
    [InlineData(1.0847, 0.5, 14.4078)]
    [InlineData(1.0847, 0.3, 15.9326)]
    [InlineData(1.2, 1, 6.54545)]
    [InlineData(1.2, 0.8, 6.82945)]
    [InlineData(1.2, 0.5, 7.72578)]
    [InlineData(1.2, 0.3, 9.47735)]
    [InlineData(2, 1, 2.66667)]
    [InlineData(2, 0.8, 3.03684)]
    [InlineData(2, 0.5, 4.26667)]
    [InlineData(2, 0.3, 6.73294)]
    [InlineData(1e6, 1, 2)]
    [InlineData(1e6, 0.8, 2.5)]
    [InlineData(1e6, 0.5, 4)]
    [InlineData(1e6, 0.3, 6.66667)]
    public void Rate_at_the_bob(double ratio, double index, double factor)
        => Assert.Equal(factor, Cylinder(ratio).RatePerSpeed(index), factor * 5e-6);

    [Fact]
    public void A_bob_alone_is_one_in_a_very_wide_cup()
        => Assert.Equal(Cylinder(1e6).RatePerSpeed(0.4),
            new Geometry.ConcentricCylinder(Millimeters(10), null, Millimeters(40)).RatePerSpeed(0.4), 1e-6);

    /// <summary>
    /// Steffe, Rheological Methods in Food Process Engineering, 2nd edition 1996, p. 234: cup 21.00 mm, bob 20.04 mm; α = 1.048, the
    /// cone's angle 2.56 degrees.
    /// </summary>
    [Fact]
    public void Cone_under_a_bob()
    {
        var cylinder = new Geometry.ConcentricCylinder(Millimeters(20.04), Millimeters(21.00), Millimeters(60));
        Assert.Equal(1.048, cylinder.Ratio, 5e-4);
        Assert.Equal(0.0447, Math.Tan(cylinder.MatchingConeDegrees * Math.PI / 180), 5e-5);
        Assert.Equal(2.56, cylinder.MatchingConeDegrees, 5e-3);
    }

    /// <summary>
    /// The standard cylinder of ISO 3219, α = 1.0847: 1.291 1/s for each 1/min at mid-gap (from memory). For a Newtonian liquid mid-gap
    /// and bob tell one viscosity.
    /// </summary>
    [Fact]
    public void Standard_cylinder()
    {
        var cylinder = Cylinder(1.0847);
        var square = 1.0847 * 1.0847;
        var (rate, stress) = ((1 + square) / (square - 1), (1 + square) / (2 * square) * cylinder.StressPerTorque(1));
        Assert.Equal(1.291, rate * 2 * Math.PI / 60, 1e-3);
        Assert.Equal(1, stress / rate / (cylinder.StressPerTorque(1) / cylinder.RatePerSpeed(1)), 1e-12);
    }

    /// <summary>Textbook forms (from memory): cone 1/tan θ and 3M/(2πR³); plates 2M/(πR³) for a Newtonian liquid.</summary>
    [Fact]
    public void Cone_and_plates()
    {
        var cone = new Geometry.ConePlate(Millimeters(25), 1);
        Assert.Equal(57.29, cone.RatePerSpeed(0.3), 0.01);
        Assert.Equal(3 / (2 * Math.PI * Math.Pow(0.025, 3)), cone.StressPerTorque(0.3), 1e-6);
        var plates = new Geometry.ParallelPlates(Millimeters(25), Millimeters(1));
        Assert.Equal(25, plates.RatePerSpeed(0.3), 1e-9);
        Assert.Equal(2 / (Math.PI * Math.Pow(0.025, 3)), plates.StressPerTorque(1), 1e-6);
    }

    [Theory]
    [InlineData(1.0847, 1)]
    [InlineData(1.2, 0.5)]
    [InlineData(3, 0.3)]
    public void A_series_of_torques_gives_back_the_law_that_made_it(double ratio, double n)
    {
        var cylinder = Cylinder(ratio);
        ImmutableArray<TorqueReading> readings = [.. new double[] { 1, 2, 5, 10, 20, 50, 100 }.Select(rpm =>
        {
            var rate = cylinder.RatePerSpeed(n) * 2 * Math.PI * rpm / 60;
            return new TorqueReading(rpm, Percentage.FromFraction(4 * Math.Pow(rate, n) / cylinder.StressPerTorque(n) / 0.05));
        })];
        var curve = FlowCurve.Of(new TorqueSeries(cylinder, Torque.FromNewtonMeters(0.05), readings).ToPoints(), FlowWeights.Relative);
        var fit = curve.Fits.Single(f => f.Model.Name == "power-law");
        Assert.Equal(4, fit.Parameters[0].Value, 1e-6);
        Assert.Equal(n, fit.Parameters[1].Value, 1e-6);
    }

    [Fact]
    public void Plates_are_corrected_for_the_law()
    {
        var plates = new Geometry.ParallelPlates(Millimeters(20), Millimeters(1));
        ImmutableArray<TorqueReading> readings = [.. new double[] { 1, 3, 10, 30, 100 }.Select(rpm =>
        {
            var rate = plates.RatePerSpeed(0.4) * 2 * Math.PI * rpm / 60;
            return new TorqueReading(rpm, Percentage.FromFraction(10 * Math.Pow(rate, 0.4) / plates.StressPerTorque(0.4) / 0.01));
        })];
        var points = new TorqueSeries(plates, Torque.FromNewtonMeters(0.01), readings).ToPoints();
        Assert.All(points, p => Assert.Equal(1, p.Stress.Pascals / (10 * Math.Pow(p.Rate.PerSecond, 0.4)), 1e-9));
    }

    private static Geometry.ConcentricCylinder Cylinder(double ratio) => new(Millimeters(10), Millimeters(10 * ratio), Millimeters(40));

    private static Length Millimeters(double value) => Length.FromMillimeters(value);
}
