using System.Globalization;
using Viscolog.Sheets;

namespace Viscolog.Reports;

/// <summary>Writes a document as a workbook: its text in the first sheet, each table in one of its own, numbers as numbers.</summary>
internal static class SheetPaper
{
    /// <summary>The sheets.</summary>
    public static IReadOnlyList<Sheet> Of(Paper paper)
    {
        var first = new List<IReadOnlyList<SheetCell>> { Row(paper.Title), Row(paper.Kind), Row(paper.Subtitle) };
        var (tables, heading) = (new List<Sheet>(), "");
        foreach (var block in paper.Blocks)
        {
            heading = block is Block.Heading { Text: var text } ? text : heading;
            if (block is Block.Grid grid)
            {
                tables.Add(
                    new(
                        heading.Length == 0 ? Say("table") : heading,
                        [Row([.. grid.Columns.Select(c => c.Name)]), .. grid.Rows.Select(r => Row(grid, r))]));
            }
            else
            {
                first.AddRange(Lines(block));
            }
        }

        first.Add(Row(paper.Foot));
        return [new(paper.Kind, first), .. tables];
    }

    private static IEnumerable<IReadOnlyList<SheetCell>> Lines(Block block) => block switch
    {
        Block.Heading heading => [Row(""), Row(heading.Text)],
        Block.Prose prose => [Row(prose.Lead is { } lead ? $"{lead}: {prose.Text}" : prose.Text)],
        Block.Result result => [Row(result.Sign, result.Text)],
        Block.Facts facts => facts.Items.Select(f => Row(f.Name, f.Text)),
        Block.Points points => points.Items.Select(p => Row(p)),
        Block.Signatures signatures => signatures.Roles.Select(r => Row(r)),
        Block.Drawing drawing => [Row(drawing.Caption)],
        _ => throw new InvalidOperationException("not a case of the closed set"),
    };

    private static SheetCell[] Row(params IEnumerable<string?> texts) => [.. texts.Select(SheetCell.Of)];

    private static SheetCell[] Row(Block.Grid grid, GridRow row)
        =>
        [
            .. row.Cells.Select(
                (text, i) => i < grid.Columns.Length && grid.Columns[i].Fill == GridFill.Numbers ? Cell(text) : SheetCell.Of(text)),
        ];

    private static SheetCell Cell(string text)
        => double.TryParse(text, NumberStyles.Float | NumberStyles.AllowThousands, Spaced, out var number)
            ? SheetCell.Of(number)
            : SheetCell.Of(text);
}
