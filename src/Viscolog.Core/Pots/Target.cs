using Viscolog.Core.Quantities;

namespace Viscolog.Core.Pots;

/// <summary>The band a run aims at, in the form it was stated. The set of cases is closed.</summary>
public abstract record Target
{
    /// <summary>The tolerance where a run states none.</summary>
    public static readonly Percentage DefaultTolerance = Percentage.FromPercent(15);

    private protected Target()
    {
    }

    /// <summary>The band itself.</summary>
    public abstract ViscosityBand Band { get; }

    /// <summary>A wanted value; its tolerance stands in the run.</summary>
    /// <param name="Wanted">The value aimed at.</param>
    /// <param name="Tolerance">Allowed either side; null for the default of 15 %.</param>
    public sealed record Value(Viscosity Wanted, Percentage? Tolerance) : Target
    {
        /// <inheritdoc/>
        public override ViscosityBand Band => ViscosityBand.Around(Wanted, Tolerance ?? DefaultTolerance);
    }

    /// <summary>Two ends.</summary>
    /// <param name="Low">The least in band.</param>
    /// <param name="High">The greatest in band; above the least.</param>
    public sealed record Ends(Viscosity Low, Viscosity High) : Target
    {
        /// <inheritdoc/>
        public override ViscosityBand Band => ViscosityBand.Between(Low, High);
    }
}

/// <summary>The string lengths that are wanted.</summary>
/// <param name="Low">The least wanted.</param>
/// <param name="High">The greatest wanted; above the least.</param>
public sealed record StringBand(Length Low, Length High)
{
    /// <summary>The greatest wanted; above the least.</summary>
    public Length High { get; } = High > Low
        ? High : throw new ArgumentOutOfRangeException(nameof(High), High.Millimeters, "must be above the least length");
}
