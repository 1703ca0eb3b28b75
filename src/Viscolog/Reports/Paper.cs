using System.Collections.Immutable;
using Viscolog.Wording;

namespace Viscolog.Reports;

/// <summary>A document to print or keep, free of its format: HTML and plain text are made of the same blocks.</summary>
/// <param name="Kind">What kind of document it is.</param>
/// <param name="Title">What it is about.</param>
/// <param name="Issued">The day it was made.</param>
internal sealed record Paper(string Kind, string Title, DateOnly Issued)
{
    /// <summary>A line below the title.</summary>
    public string? Subtitle { get; init; }

    /// <summary>The line below the title with the day.</summary>
    public string Below => Subtitle is { } subtitle
        ? Say($"{subtitle} · issued {Shown.Day(Issued)}")
        : Say($"issued {Shown.Day(Issued)}");

    /// <summary>What it says, in order.</summary>
    public ImmutableArray<Block> Blocks { get; init; } = [];

    /// <summary>What stands small at the end.</summary>
    public string Foot { get; init; } = "";
}
