namespace Viscolog.Core.Quantities;

/// <summary>
/// A unit that is accepted and shown. The set is closed: <see cref="All"/> holds every one. Each is an exact fraction of the unit that its
/// kind is kept in
/// (NIST Special Publication 811 (2008), appendix B: the avoirdupois pound is exactly 453.59237 g and its ounce a sixteenth of that, the US
/// gallon exactly 231 cubic inches, its fluid ounce a 128th of that and the cup 8 of them), so what was typed comes back as it was typed.
/// </summary>
public sealed record Unit
{
    private readonly decimal _numerator;
    private readonly decimal _denominator;
    private readonly decimal _zero;

    private Unit(string symbol, UnitKind kind, decimal numerator, decimal denominator = 1, decimal zero = 0, params string[] typed)
    {
        (Symbol, Kind, Typed) = (symbol, kind, [symbol, .. typed]);
        (_numerator, _denominator, _zero) = (numerator, denominator, zero);
    }

    /// <summary>As it is shown.</summary>
    public string Symbol { get; }

    /// <summary>What it measures.</summary>
    public UnitKind Kind { get; }

    /// <summary>As it may be typed.</summary>
    public IReadOnlyList<string> Typed { get; }

    /// <summary>Every unit; the first of a kind is the one that its quantities are kept in.</summary>
    public static IReadOnlyList<Unit> All { get; } =
    [
        new("mPa·s", UnitKind.DynamicViscosity, 1, typed: ["mPas", "mPa*s", "mPa.s"]),
        new("cP", UnitKind.DynamicViscosity, 1),
        new("Pa·s", UnitKind.DynamicViscosity, 1000, typed: ["Pas", "Pa*s", "Pa.s"]),
        new("P", UnitKind.DynamicViscosity, 100),
        new("mm²/s", UnitKind.KinematicViscosity, 1, typed: ["mm2/s"]),
        new("cSt", UnitKind.KinematicViscosity, 1),
        new("g", UnitKind.Mass, 1),
        new("kg", UnitKind.Mass, 1000),
        new("oz", UnitKind.Mass, 28.349523125m),
        new("lb", UnitKind.Mass, 453.59237m),
        new("mL", UnitKind.Volume, 1),
        new("L", UnitKind.Volume, 1000),
        new("US fl oz", UnitKind.Volume, 29.5735295625m, typed: ["us-fl-oz", "us-oz"]),
        new("US cup", UnitKind.Volume, 236.5882365m, typed: ["us-cup"]),
        new("US gal", UnitKind.Volume, 3785.411784m, typed: ["us-gal", "gal"]),
        new("°C", UnitKind.Temperature, 1, typed: ["C", "degC"]),
        new("°F", UnitKind.Temperature, 5, 9, 32, "F", "degF"),
    ];

    /// <summary>Finds a unit as typed; null where there is none. Capitals count only where two units differ by them alone.</summary>
    public static Unit? Find(string typed)
        => All.FirstOrDefault(u => u.Typed.Contains(typed, StringComparer.Ordinal)) ?? All.FirstOrDefault(
            u => u.Typed.Contains(typed, StringComparer.OrdinalIgnoreCase));

    /// <summary>Takes a value into the unit that its kind is kept in.</summary>
    /// <param name="value">In this unit; at most 1e15 in size.</param>
    /// <exception cref="OverflowException">The value is far too large.</exception>
    public decimal ToKept(decimal value) => (value - _zero) * _numerator / _denominator;

    /// <summary>Takes a value out of the unit that its kind is kept in.</summary>
    /// <param name="kept">At most 1e15 in size.</param>
    /// <exception cref="OverflowException">The value is far too large.</exception>
    public decimal FromKept(decimal kept) => (kept * _denominator / _numerator) + _zero;

    /// <summary>
    /// Converts a value to another unit. A density takes mass to volume and kinematic to dynamic viscosity, and back; other kinds don't go
    /// together.
    /// </summary>
    /// <param name="value">In this unit; at most 1e15 in size.</param>
    /// <param name="other">The unit wanted.</param>
    /// <param name="density">The material's; null where it is not known.</param>
    /// <returns>Null where the kinds don't go together or need a density that is not there.</returns>
    public decimal? To(Unit other, decimal value, Density? density)
    {
        var kept = ToKept(value);
        if (Kind == other.Kind)
        {
            return other.FromKept(kept);
        }

        if (density is not { } known)
        {
            return null;
        }

        var factor = (decimal)known.GramsPerMilliliter;
        return (Kind, other.Kind) switch
        {
            (UnitKind.KinematicViscosity, UnitKind.DynamicViscosity) or (UnitKind.Volume, UnitKind.Mass) => other.FromKept(kept * factor),
            (UnitKind.DynamicViscosity, UnitKind.KinematicViscosity) or (UnitKind.Mass, UnitKind.Volume) => other.FromKept(kept / factor),
            _ => null,
        };
    }
}

/// <summary>What a unit measures.</summary>
public enum UnitKind
{
    /// <summary>Dynamic viscosity, kept in mPa·s.</summary>
    DynamicViscosity,

    /// <summary>Kinematic viscosity, kept in mm²/s.</summary>
    KinematicViscosity,

    /// <summary>Mass, kept in g.</summary>
    Mass,

    /// <summary>Volume, kept in mL.</summary>
    Volume,

    /// <summary>Temperature, kept in °C.</summary>
    Temperature,
}
