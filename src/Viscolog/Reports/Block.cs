using System.Collections.Immutable;

namespace Viscolog.Reports;

/// <summary>A part of a document. All text in it is plain; whoever writes a format escapes it. The set of cases is closed.</summary>
internal abstract record Block
{
    private Block()
    {
    }

    /// <summary>The heading of what follows.</summary>
    internal sealed record Heading(string Text) : Block;

    /// <summary>Running text.</summary>
    internal sealed record Prose(string Text) : Block
    {
        /// <summary>A word that stands out before it; null for none.</summary>
        public string? Lead { get; init; }
    }

    /// <summary>What matters most, set apart.</summary>
    /// <param name="Sign">One or two words.</param>
    /// <param name="Text">A sentence or two.</param>
    /// <param name="Weight">How it is to look.</param>
    internal sealed record Result(string Sign, string Text, ResultWeight Weight) : Block;

    /// <summary>Names and what belongs to them.</summary>
    internal sealed record Facts(ImmutableArray<Fact> Items) : Block;

    /// <summary>Statements, each by itself.</summary>
    internal sealed record Points(ImmutableArray<string> Items) : Block;

    /// <summary>A table.</summary>
    internal sealed record Grid(ImmutableArray<GridColumn> Columns, ImmutableArray<GridRow> Rows) : Block;

    /// <summary>A picture; plain text leaves it out and says so.</summary>
    internal sealed record Drawing(SvgPicture Picture, string Caption) : Block;

    /// <summary>Room for signatures.</summary>
    internal sealed record Signatures(ImmutableArray<string> Roles) : Block;
}
