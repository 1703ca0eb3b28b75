using Viscolog.Core.Quantities;

namespace Viscolog.Core.Practice;

/// <summary>What a player did up to a reading, and what it showed.</summary>
/// <param name="Number">From 0.</param>
public sealed record PracticeLine(int Number)
{
    /// <summary>Thickener poured in since the reading before, as the scale showed it.</summary>
    public Mass Poured { get; init; }

    /// <summary>Base added since then.</summary>
    public Mass Base { get; init; }

    /// <summary>Stirring since then.</summary>
    public TimeSpan Stirred { get; init; }

    /// <summary>Standing when it was read; null for the base as it came.</summary>
    public TimeSpan? Stood { get; init; }

    /// <summary>What was read; null where the game ended without another reading.</summary>
    public Viscosity? Shown { get; init; }

    /// <summary>The dose as the scale has it.</summary>
    public Dose Dose { get; init; }

    /// <summary>The game's time when it was read.</summary>
    public TimeSpan At { get; init; }

    /// <summary>What could be seen.</summary>
    public System.Collections.Immutable.ImmutableArray<PracticeSign> Signs { get; init; } = [];

    /// <summary>The pot as it truly was.</summary>
    internal HiddenPot Pot { get; init; } = null!;
}

/// <summary>What can be seen of a practice pot that was not treated well.</summary>
public enum PracticeSign
{
    /// <summary>Lumps: more at once than a pot takes, or hardly stirred.</summary>
    Lumps,

    /// <summary>Liquid stands on it: it holds more thickener than it can bind.</summary>
    Weeping,
}
