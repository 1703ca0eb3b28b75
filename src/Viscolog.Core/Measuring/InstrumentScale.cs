using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>What an instrument shows its values on. The set is closed: <see cref="All"/> holds every scale there is.</summary>
public sealed class InstrumentScale
{
    private readonly Func<double, double, InstrumentValue> _make;

    private InstrumentScale(string name, string unit, Func<double, double, InstrumentValue> make)
        => (Name, Unit, _make) = (name, unit, make);

    /// <summary>A viscosity that the instrument works out itself.</summary>
    public static InstrumentScale Viscosity { get; } = new(
        "viscosity_mpas", "mPa·s", (mpas, _) => new InstrumentValue.Direct(Quantities.Viscosity.FromMilliPascalSeconds(mpas)))
    {
        Least = 0.001,
        Most = 1e12,
    };

    /// <summary>Seconds that a cup takes to run out.</summary>
    public static InstrumentScale CupSeconds { get; } = new("cup_s", "s", (s, _) => new InstrumentValue.CupTime(Seconds(s)))
    {
        Least = 0.001,
        Most = 1e9,
        IsTime = true,
    };

    /// <summary>Krebs units.</summary>
    public static InstrumentScale Krebs { get; } = new("ku", "KU", (units, _) => new InstrumentValue.Krebs(units))
    {
        IsAbove = true,
        Most = 1e6,
    };

    /// <summary>Torque, read at a speed.</summary>
    public static InstrumentScale Torque { get; } = new(
        "torque_pct", "% of full scale", (torque, rpm) => new InstrumentValue.Torque(Percentage.FromPercent(torque), rpm))
    {
        IsAbove = true,
        Most = 1000,
        HasSpeed = true,
    };

    /// <summary>The method's own unit.</summary>
    public static InstrumentScale Plain { get; } = new("reading", "the method's own unit", (value, _) => new InstrumentValue.Plain(value))
    {
        Most = 1e12,
    };

    /// <summary>Every scale.</summary>
    public static ImmutableArray<InstrumentScale> All { get; } = [Viscosity, CupSeconds, Krebs, Torque, Plain];

    /// <summary>Its name in files.</summary>
    public string Name { get; }

    /// <summary>Its unit.</summary>
    public string Unit { get; }

    /// <summary>The least that it shows.</summary>
    public double Least { get; private init; }

    /// <summary>The greatest: far beyond any bench, so that sums stay finite.</summary>
    public double Most { get; private init; }

    /// <summary>Whether the least itself is never shown.</summary>
    public bool IsAbove { get; private init; }

    /// <summary>Whether values go with a speed in 1/min.</summary>
    public bool HasSpeed { get; private init; }

    /// <summary>Whether values are times (see <see cref="InstrumentValue.Duration"/>).</summary>
    public bool IsTime { get; private init; }

    /// <summary>The value that is shown so.</summary>
    /// <param name="shown">The number on this scale; within its range.</param>
    /// <param name="revolutionsPerMinute">Speed in 1/min, above 0, where the scale has one.</param>
    public InstrumentValue Make(double shown, double revolutionsPerMinute = 0) => _make(shown, revolutionsPerMinute);

    // To the tick; a double's last digits are no part of what was read.
    private static TimeSpan Seconds(double seconds)
        => TimeSpan.FromTicks((long)decimal.Round((decimal)Math.Min(seconds, 1e9) * TimeSpan.TicksPerSecond));
}
