using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Practice;

/// <summary>One step of a game that has ended, with what was true then.</summary>
/// <param name="Line">What was done and read.</param>
public sealed record PracticeStep(PracticeLine Line)
{
    /// <summary>The dose that was truly in the pot.</summary>
    public Dose Dose => Line.Pot.Dose;

    /// <summary>The true body when it was read.</summary>
    public Viscosity Body => Line.Pot.Now;

    /// <summary>The body that it would have settled at.</summary>
    public Viscosity Settled => Line.Pot.Settled;

    /// <summary>How much of the body was still to come, in % of what it was; below 0 for a fall.</summary>
    public double PercentToCome => 100 * (Math.Exp(Line.Pot.SettledLn - Line.Pot.LnNow) - 1);

    /// <summary>Whether the pot was over from this step on, or still.</summary>
    public required bool IsOver { get; init; }

    /// <summary>Thickener and base put in since the game began, and what the pot then held.</summary>
    public required Mass PotTotal { get; init; }

    /// <summary>The advice that was followed; null where none was.</summary>
    public Advice? Advice { get; init; }

    /// <summary>What could be seen.</summary>
    public ImmutableArray<PracticeSign> Signs => Line.Signs;
}
