using System.Collections.Immutable;
using Viscolog.Core.Curves;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Everything that a chart of a run shows, computed once: the terminal, SVG, PDF and PNG all draw these samples.</summary>
/// <param name="Name">The run's name; null where it has none.</param>
/// <param name="Thickener">The thickener on the dose axis.</param>
/// <param name="ReferenceTemperature">The temperature that all values are stated at.</param>
public sealed record RunPicture(string? Name, string Thickener, Temperature ReferenceTemperature)
{
    /// <summary>How it was read, where the value axis needs it said; null for viscosities read off directly.</summary>
    public string? Method { get; init; }

    /// <summary>The readings that count.</summary>
    public ImmutableArray<PicturedReading> Readings { get; init; } = [];

    /// <summary>The string lengths read.</summary>
    public ImmutableArray<PicturedString> Strings { get; init; } = [];

    /// <summary>The string lengths wanted; null where the run states none.</summary>
    public StringBand? TargetString { get; init; }

    /// <summary>The steps with at least one reading.</summary>
    public ImmutableArray<PicturedStep> Steps { get; init; } = [];

    /// <summary>The believed curve in rising order of dose.</summary>
    public ImmutableArray<CurveSample> Curve { get; init; } = [];

    /// <summary>The band aimed at; null where the run states none.</summary>
    public ViscosityBand? Target { get; init; }

    /// <summary>The dose limit; null where it could not be told.</summary>
    public DoseLimit? Limit { get; init; }

    /// <summary>The advised addition; null where nothing is to be added.</summary>
    public NextIncrement? Next { get; init; }
}
