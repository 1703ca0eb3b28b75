using System.Globalization;
using System.Text;
using System.Xml;
using Viscolog.Text;

namespace Viscolog.Reports;

/// <summary>
/// Writes a document as one HTML file that needs nothing else: no script, no other file. Every text goes through the XML writer, which
/// escapes it, after
/// characters that can't be shown were taken out; there is no way to write markup that comes from a text.
/// </summary>
internal sealed class HtmlPaper
{
    /// <summary>Nothing may run or load, whatever a browser finds in the file.</summary>
    private const string Policy = "default-src 'none'; style-src 'unsafe-inline'";

    private readonly XmlWriter _writer;

    private HtmlPaper(XmlWriter writer) => _writer = writer;

    /// <summary>The whole file.</summary>
    public static byte[] Write(Paper paper)
    {
        using var stream = new MemoryStream();
        var settings = new XmlWriterSettings
        {
            Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            OmitXmlDeclaration = true,
            NewLineChars = "\n",
            NewLineHandling = NewLineHandling.None,
        };
        using (var xml = XmlWriter.Create(stream, settings))
        {
            new HtmlPaper(xml).Page(paper);
        }

        return stream.ToArray();
    }

    private void Page(Paper paper)
    {
        _writer.WriteDocType("html", null, null, null);
        Open("html", ("lang", "en"));
        Open("head");
        Void("meta", ("charset", "utf-8"));
        Void("meta", ("http-equiv", "Content-Security-Policy"), ("content", Policy));
        Void("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1"));
        Element("title", $"{paper.Kind}: {paper.Title}");
        Element("style", PaperStyle.Sheet, clean: false);
        Close();
        Line();
        Open("body");
        Open("header");
        Element("p", paper.Kind, "kind");
        Element("h1", paper.Title);
        Element("p", $"{(paper.Subtitle is null ? "" : paper.Subtitle + " · ")}issued "
            + $"{paper.Issued.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}", "sub");
        Close();
        Line();
        Open("main");
        Line();
        foreach (var block in paper.Blocks)
        {
            Write(block);
            Line();
        }

        Close();
        Line();
        Element("footer", paper.Foot);
        Line();
        Close();
        Close();
        Line();
    }

    private void Write(Block block)
    {
        switch (block)
        {
            case Block.Heading heading:
                Element("h2", heading.Text);
                break;
            case Block.Prose prose:
                Prose(prose);
                break;
            case Block.Result result:
                Open("section", ("class", "result " + Name(result.Weight)));
                Element("p", result.Sign, "sign");
                Element("p", result.Text);
                Close();
                break;
            case Block.Facts facts:
                Facts(facts);
                break;
            case Block.Points points:
                Open("ul");
                foreach (var item in points.Items)
                {
                    Element("li", item);
                }

                Close();
                break;
            case Block.Grid grid:
                Grid(grid);
                break;
            case Block.Drawing drawing:
                Open("figure", ("class", drawing.Picture.IsLow ? "low" : "high"));
                drawing.Picture.WriteTo(_writer, PlainText.Clean(drawing.Caption));
                Element("figcaption", drawing.Caption);
                Close();
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
            Element("p", prose.Text);
            return;
        }

        Open("p", ("class", "led"));
        Element("b", lead + ".");
        _writer.WriteString(" " + Shown(prose.Text));
        Close();
    }

    private void Facts(Block.Facts facts)
    {
        Open("dl");
        foreach (var fact in facts.Items)
        {
            Open("div");
            Element("dt", fact.Name);
            Element("dd", fact.Text ?? "", fact.Text is null ? "blank" : null);
            Close();
        }

        Close();
    }

    private void Grid(Block.Grid grid)
    {
        Open("table", ("class", grid.Columns.Any(c => c.Fill == GridFill.Blank) ? "form" : "list"));
        Open("thead");
        Open("tr");
        foreach (var column in grid.Columns)
        {
            Element("th", column.Name, Name(column.Fill));
        }

        Close();
        Close();
        Open("tbody");
        Line();
        foreach (var row in grid.Rows)
        {
            Row(grid, row);
            Line();
        }

        Close();
        Close();
    }

    private void Row(Block.Grid grid, GridRow row)
    {
        if (row.IsStruck || row.IsTotal)
        {
            Open("tr", ("class", row.IsStruck ? "void" : "total"));
        }
        else
        {
            Open("tr");
        }

        foreach (var (i, column) in grid.Columns.Index())
        {
            if (column.Fill == GridFill.Blank && row.Cells[i].Length > 0)
            {
                Element("td", row.Cells[i], "off");
            }
            else if (row.IsStruck && i < grid.Columns.Length - 1 && row.Cells[i].Length > 0)
            {
                Open("td", ("class", Name(column.Fill) ?? "words"));
                Element("s", row.Cells[i]);
                Close();
            }
            else
            {
                Element("td", row.Cells[i], Name(column.Fill));
            }
        }

        Close();
    }

    private void Signatures(Block.Signatures signatures)
    {
        Open("section", ("class", "sign-off"));
        foreach (var role in signatures.Roles)
        {
            Open("div");
            Element("p", "", "line");
            Element("p", role + ": name, signature, date");
            Close();
        }

        Close();
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

    private void Open(string name, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        _writer.WriteStartElement(name);
        foreach (var (key, value) in attributes)
        {
            _writer.WriteAttributeString(key, value);
        }
    }

    private void Close() => _writer.WriteFullEndElement();

    private void Void(string name, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        Open(name, attributes);
        _writer.WriteEndElement();
    }

    private void Element(string name, string text, string? style = null, bool clean = true)
    {
        _writer.WriteStartElement(name);
        if (style is not null)
        {
            _writer.WriteAttributeString("class", style);
        }

        _writer.WriteString(clean ? Shown(text) : text);
        _writer.WriteFullEndElement();
    }

    private static string Shown(string text) => Paragraph.Bound(PlainText.Clean(text));

    private void Line() => _writer.WriteWhitespace("\n");
}
