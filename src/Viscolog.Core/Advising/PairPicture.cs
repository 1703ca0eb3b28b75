using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Everything that pictures of a run with two thickeners show, computed once.</summary>
/// <param name="Name">The run's name; null where it has none.</param>
/// <param name="BodyThickener">The thickener that makes the body.</param>
/// <param name="StringThickener">The thickener that brings the string.</param>
/// <param name="ReferenceTemperature">The temperature that bodies are stated at.</param>
public sealed record PairPicture(string? Name, string BodyThickener, string StringThickener, Temperature ReferenceTemperature)
{
    /// <summary>The steps in order of time: the path through the doses.</summary>
    public ImmutableArray<PairPoint> Path { get; init; } = [];

    /// <summary>Over the dose of the body thickener.</summary>
    public required PairSlice OverBody { get; init; }

    /// <summary>Over the dose of the string thickener.</summary>
    public required PairSlice OverString { get; init; }

    /// <summary>Over both.</summary>
    public required PairMap Map { get; init; }

    /// <summary>The band of the body; null for none.</summary>
    public ViscosityBand? Target { get; init; }

    /// <summary>The band of the string; null for none.</summary>
    public StringBand? TargetString { get; init; }

    /// <summary>Where the advised addition leads; null where nothing is to be added.</summary>
    public PairPlace? Next { get; init; }

    /// <summary>Where the plan ends; null where there is none.</summary>
    public PairPlace? End { get; init; }
}
