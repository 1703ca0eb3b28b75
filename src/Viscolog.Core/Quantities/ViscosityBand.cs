namespace Viscolog.Core.Quantities;

/// <summary>The interval of viscosities that counts as on target, and the value aimed at inside it.</summary>
public sealed record ViscosityBand
{
    private ViscosityBand(Viscosity low, Viscosity aim, Viscosity high) => (Low, Aim, High) = (low, aim, high);

    /// <summary>The least viscosity in band.</summary>
    public Viscosity Low { get; }

    /// <summary>The wanted value.</summary>
    public Viscosity Aim { get; }

    /// <summary>The greatest viscosity in band.</summary>
    public Viscosity High { get; }

    /// <summary>A target with the same relative tolerance either side.</summary>
    /// <param name="aim">The wanted value.</param>
    /// <param name="tolerance">Above 0 and below 100 %.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is out of range.</exception>
    public static ViscosityBand Around(Viscosity aim, Percentage tolerance)
    {
        var t = Guard.Between(tolerance.Fraction, 1e-6, 0.999999, nameof(tolerance));
        return new(
            Viscosity.FromMilliPascalSeconds(aim.MilliPascalSeconds * (1 - t)),
            aim,
            Viscosity.FromMilliPascalSeconds(aim.MilliPascalSeconds * (1 + t)));
    }

    /// <summary>
    /// A band given by its two ends; the aim is their geometric mean, the middle on the scale where readings scatter evenly.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The ends are not in rising order.</exception>
    public static ViscosityBand Between(Viscosity low, Viscosity high)
    {
        if (low >= high)
        {
            throw new ArgumentOutOfRangeException(nameof(high), high.MilliPascalSeconds, "must be above the low end");
        }

        return new(low, Viscosity.FromLn((low.Ln + high.Ln) / 2), high);
    }

    /// <summary>The band with both ends and the aim moved by the same factor, given as its logarithm.</summary>
    internal ViscosityBand Shifted(double ln)
        => ln == 0 ? this : new(Viscosity.FromLn(Low.Ln + ln), Viscosity.FromLn(Aim.Ln + ln), Viscosity.FromLn(High.Ln + ln));
}
