using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>
/// The coefficient B of ln η = A + B/T (Arrhenius–Andrade; Andrade, Philosophical Magazine 17 (1934) 497–511 and 698–732), T in kelvin, and
/// how well it is known.
/// </summary>
public sealed record TemperatureCoefficient
{
    /// <summary>Readings of one liquid tell the coefficient only when they lie at least so many °C apart.</summary>
    public const double LeastSpread = 5;

    /// <summary>The molar gas constant in kJ/(mol·K) (CODATA 2018, exact since the SI of 2019).</summary>
    private const double GasConstant = 8.31446261815324e-3;

    /// <summary>Standard deviation of a coefficient that somebody entered, over the coefficient (a rule of this project).</summary>
    private const double StatedSd = 0.1;

    /// <summary>The coefficient in K at a standard normal number: what a posterior draws from.</summary>
    /// <remarks>
    /// Stated or learned: normal. The default is log-normal with heavier tails, ln B = ln 2000 + 0.33·x + 0.05·x³: nine in ten lie within
    /// 930 and 4300 K, and sugar syrups with 5000 to 8000 K (Bingham and Jackson 1918) are not out of reach (a rule of this project).
    /// </remarks>
    /// <param name="deviate">Standard normal.</param>
    internal double At(double deviate) => this == Default
        ? Kelvin * Math.Exp((0.33 * deviate) + (0.05 * deviate * deviate * deviate))
        : Kelvin + (SdKelvin * deviate);

    private const int Grid = 2000;
    private const double GridEnd = 4;

    private TemperatureCoefficient(double kelvin, double sdKelvin) => (Kelvin, SdKelvin) = (kelvin, sdKelvin);

    /// <summary>The value in K.</summary>
    public double Kelvin { get; }

    /// <summary>Its standard deviation in K.</summary>
    public double SdKelvin { get; }

    /// <summary>The activation energy B·R in kJ/mol.</summary>
    public double ActivationEnergy => Kelvin * GasConstant;

    /// <summary>
    /// 2000 K ± 1000 K, used where nothing is known (from memory; water has about 1900 K, thick syrups several thousand).
    /// </summary>
    public static TemperatureCoefficient Default { get; }
        = new(TemperatureCorrection.DefaultCoefficient, TemperatureCorrection.DefaultCoefficientSd);

    /// <summary>One that somebody entered, taken to be good to 10 %.</summary>
    /// <param name="kelvin">In K; 0 or more, at most 30 000.</param>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public static TemperatureCoefficient Stated(double kelvin)
    {
        Guard.Between(kelvin, 0, 30_000);
        return new(kelvin, StatedSd * kelvin);
    }

    /// <summary>
    /// Learns from viscosities of the same liquid at several temperatures: least squares of ln η on 1/T, one level a liquid, one slope
    /// for all, weighed against what a coefficient may be at all (<see cref="At"/>), by numeric integration: that has heavy tails, so
    /// readings that tell a high coefficient are not drawn to the default.
    /// </summary>
    /// <param name="liquids">For each liquid its readings.</param>
    /// <param name="repeatability">Relative standard deviation of one reading; above 0.</param>
    /// <returns>Null where no liquid was read at temperatures <see cref="LeastSpread"/> apart.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The repeatability is 0.</exception>
    public static TemperatureCoefficient? Learned(
        IEnumerable<IReadOnlyCollection<(Temperature At, Viscosity Viscosity)>> liquids, Percentage repeatability)
    {
        var sigma = Guard.Positive(repeatability.Fraction, nameof(repeatability));
        var (xx, xy) = (0.0, 0.0);
        foreach (var readings in liquids.Where(IsSpread))
        {
            var x = readings.Average(r => 1 / r.At.Kelvin);
            var y = readings.Average(r => r.Viscosity.Ln);
            xx += readings.Sum(r => ((1 / r.At.Kelvin) - x) * ((1 / r.At.Kelvin) - x));
            xy += readings.Sum(r => ((1 / r.At.Kelvin) - x) * (r.Viscosity.Ln - y));
        }

        if (xx == 0)
        {
            return null;
        }

        var (slope, precision) = (xy / xx, xx / (sigma * sigma));
        var (weights, sum, squares) = (0.0, 0.0, 0.0);
        for (var i = -Grid; i <= Grid; i++)
        {
            var (deviate, off) = (GridEnd * i / Grid, Default.At(GridEnd * i / Grid) - slope);
            var weight = Math.Exp(-0.5 * ((deviate * deviate) + (precision * off * off)));
            (weights, sum, squares) = (weights + weight, sum + (weight * off), squares + (weight * off * off));
        }

        if (weights <= 0)
        {
            return new(slope, 1 / Math.Sqrt(precision));
        }

        var mean = sum / weights;
        return new(Math.Max(0, slope + mean), Math.Sqrt(Math.Max(0, (squares / weights) - (mean * mean))));
    }

    private static bool IsSpread(IReadOnlyCollection<(Temperature At, Viscosity Viscosity)> readings)
        => readings.Count > 1 && readings.Max(r => r.At.Celsius) - readings.Min(r => r.At.Celsius) >= LeastSpread;
}
