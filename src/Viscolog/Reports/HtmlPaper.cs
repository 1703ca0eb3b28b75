using Viscolog.Text;

namespace Viscolog.Reports;

/// <summary>Writes a document as an HTML file.</summary>
internal sealed class HtmlPaper
{
    private readonly HtmlPen _pen;

    private HtmlPaper(HtmlPen pen) => _pen = pen;

    /// <summary>The whole file.</summary>
    public static byte[] Write(Paper paper)
        => HtmlPen.Write($"{paper.Kind}: {paper.Title}", PaperStyle.Sheet, pen => new HtmlPaper(pen).Body(paper));

    private void Body(Paper paper)
    {
        _pen.Open("header");
        _pen.Element("p", paper.Kind, "kind");
        _pen.Element("h1", paper.Title);
        _pen.Element("p", paper.Below, "sub");
        _pen.Close();
        _pen.Line();
        _pen.Open("main");
        _pen.Line();
        foreach (var block in paper.Blocks)
        {
            Write(block);
            _pen.Line();
        }

        _pen.Close();
        _pen.Line();
        _pen.Element("footer", paper.Foot);
        _pen.Line();
    }

    private void Write(Block block)
    {
        switch (block)
        {
            case Block.Heading heading:
                _pen.Element("h2", heading.Text);
                break;
            case Block.Prose prose:
                Prose(prose);
                break;
            case Block.Result result:
                _pen.Open("section", ("class", "result " + Name(result.Weight)));
                _pen.Element("p", result.Sign, "sign");
                _pen.Element("p", result.Text);
                _pen.Close();
                break;
            case Block.Facts facts:
                Facts(facts);
                break;
            case Block.Points points:
                _pen.Open("ul");
                foreach (var item in points.Items)
                {
                    _pen.Element("li", item);
                }

                _pen.Close();
                break;
            case Block.Grid grid:
                Grid(grid);
                break;
            case Block.Drawing drawing:
                _pen.Open("figure", ("class", drawing.Picture.IsLow ? "low" : "high"));
                _pen.Draw(drawing.Picture, drawing.Caption);
                _pen.Element("figcaption", drawing.Caption);
                _pen.Close();
                break;
            case Block.Signatures signatures:
                Signatures(signatures);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "not a case of the closed set");
        }
    }

    private void Prose(Block.Prose prose)
    {
        if (prose.Lead is not { } lead)
        {
            _pen.Element("p", prose.Text);
            return;
        }

        _pen.Open("p", ("class", "led"));
        _pen.Element("b", lead + ".");
        _pen.Space();
        _pen.Text(prose.Text);
        _pen.Close();
    }

    private void Facts(Block.Facts facts)
    {
        _pen.Open("dl");
        foreach (var fact in facts.Items)
        {
            _pen.Open("div");
            _pen.Element("dt", fact.Name);
            _pen.Element("dd", fact.Text ?? "", fact.Text is null ? "blank" : null);
            _pen.Close();
        }

        _pen.Close();
    }

    private void Grid(Block.Grid grid)
    {
        _pen.Open("table", ("class", grid.Columns.Any(c => c.Fill == GridFill.Blank) ? "form" : "list"));
        _pen.Open("thead");
        _pen.Open("tr");
        foreach (var column in grid.Columns)
        {
            _pen.Element("th", column.Name, Name(column.Fill));
        }

        _pen.Close();
        _pen.Close();
        _pen.Open("tbody");
        _pen.Line();
        foreach (var row in grid.Rows)
        {
            Row(grid, row);
            _pen.Line();
        }

        _pen.Close();
        _pen.Close();
    }

    private void Row(Block.Grid grid, GridRow row)
    {
        if (row.IsStruck || row.IsTotal)
        {
            _pen.Open("tr", ("class", row.IsStruck ? "void" : "total"));
        }
        else
        {
            _pen.Open("tr");
        }

        foreach (var (i, column) in grid.Columns.Index())
        {
            var cell = row.Cells[i];
            var style = column.Fill == GridFill.Blank && cell.Length > 0 ? "off" : Name(column.Fill) ?? "words";
            // The heading goes with the cell: on a narrow screen a row is a list of them.
            _pen.Open("td", ("class", style), ("data-name", PlainText.Clean(column.Name)));
            if (row.IsStruck && i < grid.Columns.Length - 1 && cell.Length > 0 && style != "off")
            {
                _pen.Element("s", cell);
            }
            else
            {
                _pen.Text(cell);
            }

            _pen.Close();
        }

        _pen.Close();
    }

    private void Signatures(Block.Signatures signatures)
    {
        _pen.Open("section", ("class", "sign-off"));
        foreach (var role in signatures.Roles)
        {
            _pen.Open("div");
            _pen.Element("p", "", "line");
            _pen.Element("p", Say($"{role}: name, signature, date"));
            _pen.Close();
        }

        _pen.Close();
    }

    private static string? Name(GridFill fill) => fill switch
    {
        GridFill.Numbers => "number",
        GridFill.Blank => "blank",
        _ => null,
    };

    private static string Name(ResultWeight weight) => weight switch
    {
        ResultWeight.Good => "good",
        ResultWeight.Bad => "bad",
        _ => "plain",
    };
}
