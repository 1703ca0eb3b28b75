using System.Collections.Immutable;
using Viscolog.Core.Flow;

namespace Viscolog.FlowFiles;

/// <summary>A flow curve as a file holds it.</summary>
/// <param name="Points">Rates and stresses, in the order read.</param>
internal sealed record FlowFile(ImmutableArray<FlowPoint> Points)
{
    /// <summary>The sample's name.</summary>
    public string? Name { get; init; }

    /// <summary>Where the rates come from where they were worked out of speeds and torques.</summary>
    public string? Source { get; init; }

    /// <summary>What the reader ought to know, a line each.</summary>
    public ImmutableArray<string> Warnings { get; init; } = [];
}
