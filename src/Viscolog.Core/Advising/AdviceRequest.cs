using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>What is asked.</summary>
/// <param name="Run">The run so far.</param>
public sealed record AdviceRequest(Run Run)
{
    /// <summary>The band aimed at; null for the run's own.</summary>
    public ViscosityBand? Band { get; init; }

    /// <summary>The greatest chance of going over that an addition may carry.</summary>
    public Percentage Risk { get; init; } = IncrementPolicy.DefaultRisk;

    /// <summary>An addition to be judged beside the advice, dilution water included; null for none.</summary>
    public Mass? WhatIf { get; init; }

    /// <summary>Earlier runs; those with another base or thickener are left aside.</summary>
    public ImmutableArray<Run> History { get; init; } = [];
}
