using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>What an instrument showed, before any conversion. The set of cases is closed.</summary>
public abstract record InstrumentValue
{
    private protected InstrumentValue()
    {
    }

    /// <summary>A viscosity read off directly.</summary>
    /// <param name="Viscosity">As read, at the reading's temperature.</param>
    public sealed record Direct(Viscosity Viscosity) : InstrumentValue;

    /// <summary>Time that a cup took to run out.</summary>
    /// <param name="Time">Above 0.</param>
    public sealed record CupTime(TimeSpan Time) : InstrumentValue;

    /// <summary>What a Krebs paddle showed.</summary>
    /// <param name="Units">In KU, above 0.</param>
    public sealed record Krebs(double Units) : InstrumentValue;

    /// <summary>Torque of a rotational viscometer at a speed.</summary>
    /// <param name="OfFullScale">Torque over full-scale torque.</param>
    /// <param name="RevolutionsPerMinute">Speed in 1/min, above 0.</param>
    public sealed record Torque(Percentage OfFullScale, double RevolutionsPerMinute) : InstrumentValue;

    /// <summary>A value in the method's own unit.</summary>
    /// <param name="Value">As read; finite.</param>
    public sealed record Plain(double Value) : InstrumentValue;
}
