using System.Text;
using Viscolog.Text;

namespace Viscolog.Reports;

/// <summary>Writes a document as plain text.</summary>
internal sealed class TextPaper
{
    /// <summary>Columns of a page.</summary>
    public const int Width = 96;

    private const string Blank = "______";

    private readonly StringBuilder _text = new();

    /// <summary>The whole text; lines end with LF.</summary>
    public static string Write(Paper paper)
    {
        var page = new TextPaper();
        page.Line(PlainText.Clean($"{paper.Kind.ToUpperInvariant()}: {paper.Title}"));
        page.Wrapped(paper.Below, "");
        page.Line();
        foreach (var block in paper.Blocks)
        {
            page.Write(block);
        }

        page.Wrapped(paper.Foot, "");
        return page._text.ToString();
    }

    private void Write(Block block)
    {
        switch (block)
        {
            case Block.Heading heading:
                Line(PlainText.Clean(heading.Text));
                Line(new('-', PlainText.Columns(PlainText.Clean(heading.Text))));
                return;
            case Block.Prose prose:
                Wrapped(prose.Lead is { } lead ? $"{lead.ToUpperInvariant()}. {prose.Text}" : prose.Text, "");
                break;
            case Block.Result result:
                Line($"  *** {PlainText.Clean(result.Sign).ToUpperInvariant()} ***");
                Wrapped(result.Text, "  ");
                break;
            case Block.Facts facts:
                Facts(facts);

                break;
            case Block.Points points:
                foreach (var item in points.Items)
                {
                    Wrapped(item, "- ", "  ");
                }

                break;
            case Block.Grid grid:
                Grid(grid);
                break;
            case Block.Drawing drawing:
                Wrapped(Say($"[picture, in the HTML form only: {drawing.Caption}]"), "");
                break;
            case Block.Signatures signatures:
                Signatures(signatures);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "not a case of the closed set");
        }

        Line();
    }

    private void Facts(Block.Facts facts)
    {
        string[] names = [.. facts.Items.Select(f => PlainText.Clean(f.Name))];
        var widest = names.Max(PlainText.Columns) + 2;
        foreach (var (name, fact) in names.Zip(facts.Items))
        {
            Wrapped(fact.Text ?? new('_', 24), name.PadRight(widest), new(' ', widest));
        }
    }

    private void Grid(Block.Grid grid)
    {
        var table = new TextTable([.. grid.Columns.Select(c => PlainText.Clean(c.Name))]);
        foreach (var row in grid.Rows)
        {
            table.Add([.. row.Cells.Select((cell, i) => Cell(grid.Columns[i], cell))]);
        }

        foreach (var line in table.Lines(Width))
        {
            Line(line);
        }
    }

    private static string Cell(GridColumn column, string cell) => column.Fill == GridFill.Blank && cell.Length == 0 ? Blank : cell;

    private void Signatures(Block.Signatures signatures)
    {
        string[] roles = [.. signatures.Roles.Select(PlainText.Clean)];
        var widest = roles.Max(PlainText.Columns) + 2;
        foreach (var role in roles)
        {
            Line();
            Line($"{role.PadRight(widest)}{new('_', 28)}  {Say("date")} {new('_', 12)}");
        }
    }

    private void Wrapped(string words, string first, string? next = null)
    {
        var lead = first;
        foreach (var line in Paragraph.Of(PlainText.Clean(words), Width - PlainText.Columns(first)))
        {
            Line(lead + line);
            lead = next ?? first;
        }
    }

    private void Line(string line = "") => _text.Append(line.TrimEnd()).Append('\n');
}
