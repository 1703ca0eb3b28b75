using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Practice;

/// <summary>One moment of a real run: after a reading, before what was done next.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Known">The run as it was known then.</param>
/// <param name="Outcome">The advice that this gives; had the same been asked then, with the same history.</param>
/// <param name="Done">What was done next, up to and with the next reading; empty at the end of the run.</param>
public sealed record ReplayMoment(int Number, Run Known, AdviceOutcome Outcome, ImmutableArray<Entry> Done)
{
    /// <summary>The dose then.</summary>
    public required Dose DoseBefore { get; init; }

    /// <summary>The dose after what was done.</summary>
    public required Dose DoseAfter { get; init; }

    /// <summary>How the two compare; null where there was no advice.</summary>
    public required ReplayMatch? Match { get; init; }

    /// <summary>The advice; null where there was none.</summary>
    public Advice? Advice => Outcome.Given;

    /// <summary>What the grams that were poured promised then; null where none were, or where nothing could be told.</summary>
    public WhatIf? Poured => Advice?.WhatIf;
}
