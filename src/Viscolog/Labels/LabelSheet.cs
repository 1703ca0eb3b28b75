using System.Collections.Immutable;
using System.Globalization;

namespace Viscolog.Labels;

/// <summary>A sheet of labels, all of one size, in the middle of a page. Lengths in mm.</summary>
/// <param name="Page">The page.</param>
/// <param name="Columns">Labels across.</param>
/// <param name="Rows">Labels down.</param>
/// <param name="Width">Width of a label.</param>
/// <param name="Height">Height of a label.</param>
/// <param name="Gap">Room between columns; rows touch.</param>
internal sealed record LabelSheet(PageSize Page, int Columns, int Rows, double Width, double Height, double Gap = 0)
{
    /// <summary>Sizes that stationers commonly sell (from memory; no standard has them but ISO 216, of which 105 x 148 mm is A6).</summary>
    public static ImmutableArray<LabelSheet> All { get; } =
    [
        new(PageSize.A4, 3, 8, 70, 37), new(PageSize.A4, 3, 7, 63.5, 38.1, 2.5), new(PageSize.A4, 2, 5, 105, 57),
        new(PageSize.A4, 2, 4, 99.1, 67.7, 2.5), new(PageSize.A4, 2, 2, 105, 148),
        new(PageSize.Letter, 2, 5, 101.6, 50.8, 4.8), new(PageSize.Letter, 2, 3, 101.6, 84.7, 4.8),
    ];

    /// <summary>What it is called: the page, columns by rows.</summary>
    public string Name => FormattableString.Invariant($"{Page.Name.ToLowerInvariant()}-{Columns}x{Rows}");

    /// <summary>The size of a label in words.</summary>
    public string Size => string.Create(Numbers, $"{Width:0.#} x {Height:0.#} mm");

    public int Count => Columns * Rows;

    /// <summary>Room to the left of the first column and to the right of the last.</summary>
    public double Left => (Page.Width - (Columns * Width) - ((Columns - 1) * Gap)) / 2;

    /// <summary>Room above the first row and below the last.</summary>
    public double Top => (Page.Height - (Rows * Height)) / 2;

    public static LabelSheet? Find(string name)
        => All.FirstOrDefault(s => string.Equals(s.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));

    /// <summary>A length as a style sheet takes it.</summary>
    public static string Mm(double length) => length.ToString("0.##", CultureInfo.InvariantCulture) + "mm";
}

/// <summary>A page: A4 of ISO 216, and Letter, 8.5 by 11 inches, of ANSI/ASME Y14.1. Lengths in mm.</summary>
internal sealed record PageSize(string Name, double Width, double Height)
{
    public static readonly PageSize A4 = new("A4", 210, 297);

    public static readonly PageSize Letter = new("Letter", 215.9, 279.4);
}
