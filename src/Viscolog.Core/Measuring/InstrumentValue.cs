using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>What an instrument showed, before any conversion. The set of cases is closed.</summary>
public abstract record InstrumentValue
{
    private protected InstrumentValue()
    {
    }

    /// <summary>The scale that it was read on.</summary>
    public abstract InstrumentScale Scale { get; }

    /// <summary>The number on that scale.</summary>
    public abstract double Shown { get; }

    /// <summary>The value as a time, to the tick; null where the scale shows none.</summary>
    public virtual TimeSpan? Duration => null;

    /// <summary>The speed beside it in 1/min; null where none belongs there.</summary>
    public virtual double? Speed => null;

    /// <summary>A viscosity read off directly.</summary>
    /// <param name="Viscosity">As read, at the reading's temperature.</param>
    public sealed record Direct(Viscosity Viscosity) : InstrumentValue
    {
        /// <inheritdoc/>
        public override InstrumentScale Scale => InstrumentScale.Viscosity;

        /// <inheritdoc/>
        public override double Shown => Viscosity.MilliPascalSeconds;
    }

    /// <summary>Time that a cup took to run out.</summary>
    /// <param name="Time">Above 0.</param>
    public sealed record CupTime(TimeSpan Time) : InstrumentValue
    {
        /// <inheritdoc/>
        public override InstrumentScale Scale => InstrumentScale.CupSeconds;

        /// <inheritdoc/>
        public override double Shown => Time.TotalSeconds;

        /// <inheritdoc/>
        public override TimeSpan? Duration => Time;
    }

    /// <summary>What a Krebs paddle showed.</summary>
    /// <param name="Units">In KU, above 0.</param>
    public sealed record Krebs(double Units) : InstrumentValue
    {
        /// <inheritdoc/>
        public override InstrumentScale Scale => InstrumentScale.Krebs;

        /// <inheritdoc/>
        public override double Shown => Units;
    }

    /// <summary>Torque of a rotational viscometer at a speed.</summary>
    /// <param name="OfFullScale">Torque over full-scale torque.</param>
    /// <param name="RevolutionsPerMinute">Speed in 1/min, above 0.</param>
    public sealed record Torque(Percentage OfFullScale, double RevolutionsPerMinute) : InstrumentValue
    {
        /// <inheritdoc/>
        public override InstrumentScale Scale => InstrumentScale.Torque;

        /// <inheritdoc/>
        public override double Shown => OfFullScale.Percent;

        /// <inheritdoc/>
        public override double? Speed => RevolutionsPerMinute;
    }

    /// <summary>A value in the method's own unit.</summary>
    /// <param name="Value">As read; finite.</param>
    public sealed record Plain(double Value) : InstrumentValue
    {
        /// <inheritdoc/>
        public override InstrumentScale Scale => InstrumentScale.Plain;

        /// <inheritdoc/>
        public override double Shown => Value;
    }
}
