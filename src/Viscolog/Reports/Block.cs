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
    internal sealed record Facts(ImmutableArray<Fact> Items) : Block
    {
        /// <summary>Those that there are.</summary>
        public static Facts Of(params IEnumerable<Fact?> facts) => new([.. facts.OfType<Fact>()]);
    }

    /// <summary>Statements, each by itself.</summary>
    internal sealed record Points(ImmutableArray<string> Items) : Block;

    /// <summary>A table.</summary>
    internal sealed record Grid(ImmutableArray<GridColumn> Columns, ImmutableArray<GridRow> Rows) : Block;

    /// <summary>A picture; plain text leaves it out and says so.</summary>
    internal sealed record Drawing(SvgPicture Picture, string Caption) : Block;

    /// <summary>Room for signatures.</summary>
    internal sealed record Signatures(ImmutableArray<string> Roles) : Block;
}

/// <summary>A name and what belongs to it.</summary>
/// <param name="Name">The name.</param>
/// <param name="Text">What belongs to it; null where somebody is to write it by hand.</param>
internal sealed record Fact(string Name, string? Text)
{
    /// <summary>Room to write.</summary>
    public static Fact Blank(string name) => new(name, null);

    /// <summary>The fact where it is known, else nothing.</summary>
    public static Fact? Known(string name, string? text) => text is null ? null : new(name, text);
}

/// <summary>A column of a table.</summary>
/// <param name="Name">Its heading.</param>
/// <param name="Fill">What stands in it.</param>
internal sealed record GridColumn(string Name, GridFill Fill = GridFill.Words)
{
    /// <summary>Columns of numbers.</summary>
    public static IEnumerable<GridColumn> Numbers(params IEnumerable<string> names)
        => names.Select(n => new GridColumn(n, GridFill.Numbers));

    /// <summary>Columns to write into.</summary>
    public static IEnumerable<GridColumn> Blank(params IEnumerable<string> names) => names.Select(n => new GridColumn(n, GridFill.Blank));
}

/// <summary>A row of a table.</summary>
/// <param name="Cells">One for each column.</param>
internal sealed record GridRow(ImmutableArray<string> Cells)
{
    /// <summary>Whether it counts no more and is struck through; its last cell, which says why, is not.</summary>
    public bool IsStruck { get; init; }

    /// <summary>Whether it sums up the rows above it.</summary>
    public bool IsTotal { get; init; }

    public static GridRow Of(params string[] cells) => new([.. cells]);
}

/// <summary>What stands in a column.</summary>
internal enum GridFill
{
    /// <summary>Text, to the left.</summary>
    Words,

    /// <summary>Numbers, to the right.</summary>
    Numbers,

    /// <summary>Room to write by hand; a cell with text is not to be filled.</summary>
    Blank,
}

/// <summary>How a result looks; its words say the same.</summary>
internal enum ResultWeight
{
    Plain,
    Good,
    Bad,
}
