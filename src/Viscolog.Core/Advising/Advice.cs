using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Advice for a pot: what to do, what to expect, the risk, and why.</summary>
/// <param name="Action">What to do now.</param>
/// <param name="Why">One or two sentences for the person at the bench.</param>
public sealed record Advice(BenchAction Action, string Why)
{
    /// <summary>The thickener it is about.</summary>
    public required string Thickener { get; init; }

    /// <summary>Its dose now.</summary>
    public required Dose DoseNow { get; init; }

    /// <summary>Its share of everything in the pot now.</summary>
    public required Percentage ShareNow { get; init; }

    /// <summary>The band aimed at.</summary>
    public required ViscosityBand Band { get; init; }

    /// <summary>The settled body now; null before any reading.</summary>
    public Estimate? Now { get; init; }

    /// <summary>Chance that the settled body is in band: after the action where it changes the pot, else now.</summary>
    public required Percentage ChanceInBand { get; init; }

    /// <summary>Chance that it is over the band, likewise.</summary>
    public required Percentage ChanceOver { get; init; }

    /// <summary>The dose limit and its reason.</summary>
    public required DoseLimit Limit { get; init; }

    /// <summary>String and the other thickener; null where the advice is about the body alone.</summary>
    public PairAdvice? Pair { get; init; }

    /// <summary>What the addition that was asked about would bring; null where none was, or where nothing has been read.</summary>
    public WhatIf? WhatIf { get; init; }

    /// <summary>What the reader must know.</summary>
    public ImmutableArray<string> Warnings { get; init; } = [];

    /// <summary>Safety at the bench.</summary>
    public ImmutableArray<string> Cautions { get; init; } = [];
}
