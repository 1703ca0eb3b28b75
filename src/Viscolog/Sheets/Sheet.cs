namespace Viscolog.Sheets;

/// <summary>A sheet to be written: its name and its rows.</summary>
/// <param name="Name">Up to 31 characters; what a name may not hold is left out when it is written.</param>
/// <param name="Rows">The rows from the top, each with its cells from the left.</param>
internal sealed record Sheet(string Name, IReadOnlyList<IReadOnlyList<SheetCell>> Rows);

/// <summary>A cell: a number, a text, or nothing.</summary>
internal readonly record struct SheetCell
{
    private SheetCell(string? text, double? number) => (Text, Number) = (text, number);

    /// <summary>The text; null where it is none.</summary>
    public string? Text { get; }

    /// <summary>The number; null where it is none.</summary>
    public double? Number { get; }

    /// <summary>A text, whatever it looks like; nothing where it is empty.</summary>
    public static SheetCell Of(string? text) => new(string.IsNullOrEmpty(text) ? null : text, null);

    /// <summary>A number; a text where it is not finite.</summary>
    public static SheetCell Of(double number)
        => double.IsFinite(number) ? new(null, number) : Of(number.ToString(System.Globalization.CultureInfo.InvariantCulture));
}
