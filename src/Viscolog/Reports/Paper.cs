using System.Collections.Immutable;

namespace Viscolog.Reports;

/// <summary>A document to print or keep, free of its format: HTML and plain text are made of the same blocks.</summary>
/// <param name="Kind">What kind of document it is.</param>
/// <param name="Title">What it is about.</param>
/// <param name="Issued">The day it was made.</param>
internal sealed record Paper(string Kind, string Title, DateOnly Issued)
{
    /// <summary>A line below the title.</summary>
    public string? Subtitle { get; init; }

    /// <summary>What it says, in order.</summary>
    public ImmutableArray<Block> Blocks { get; init; } = [];

    /// <summary>What stands small at the end.</summary>
    public string Foot { get; init; } = "";
}
