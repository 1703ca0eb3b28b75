using System.Text;
using System.Text.RegularExpressions;
using System.Xml;
using Viscolog.Languages;
using Viscolog.Text;

namespace Viscolog.Reports;

/// <summary>
/// Writes an HTML file that needs nothing else: no script, no other file. Every text goes through the XML writer, which escapes it, after
/// characters that can't be shown were taken out; there is no way to write markup that comes from a text.
/// </summary>
internal sealed partial class HtmlPen
{
    /// <summary>Nothing may run or load, whatever a browser finds in the file.</summary>
    private const string Policy = "default-src 'none'; style-src 'unsafe-inline'";

    private readonly XmlWriter _writer;

    private HtmlPen(XmlWriter writer) => _writer = writer;

    /// <summary>The whole file.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="style">Its style sheet, without a sign that HTML escapes.</param>
    /// <param name="body">Writes what stands in the body.</param>
    public static byte[] Write(string title, string style, Action<HtmlPen> body)
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
            new HtmlPen(xml).Page(title, style, body);
        }

        return stream.ToArray();
    }

    public void Open(string name, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        _writer.WriteStartElement(name);
        foreach (var (key, value) in attributes)
        {
            _writer.WriteAttributeString(key, value);
        }
    }

    public void Close() => _writer.WriteFullEndElement();

    /// <summary>An element that holds a text alone.</summary>
    /// <param name="name">The element's name.</param>
    /// <param name="text">The text.</param>
    /// <param name="style">Its class; null for none.</param>
    public void Element(string name, string text, string? style = null)
    {
        _writer.WriteStartElement(name);
        if (style is not null)
        {
            _writer.WriteAttributeString("class", style);
        }

        Text(text);
        _writer.WriteFullEndElement();
    }

    public void Text(string text) => _writer.WriteString(Shown(text));

    /// <summary>A picture with an alternative in words.</summary>
    public void Draw(SvgPicture picture, string words) => picture.WriteTo(_writer, PlainText.Clean(words));

    public void Space() => _writer.WriteString(" ");

    public void Line() => _writer.WriteWhitespace("\n");

    private void Page(string title, string style, Action<HtmlPen> body)
    {
        _writer.WriteDocType("html", null, null, null);
        Open("html", ("lang", Spoken == Language.German ? "de" : "en"));
        Open("head");
        Void("meta", ("charset", "utf-8"));
        Void("meta", ("http-equiv", "Content-Security-Policy"), ("content", Policy));
        Void("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1"));
        Element("title", title);
        Open("style");
        _writer.WriteString(style);
        Close();
        Close();
        Line();
        Open("body");
        body(this);
        Close();
        Close();
        Line();
    }

    private void Void(string name, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        Open(name, attributes);
        _writer.WriteEndElement();
    }

    /// <summary>The text as a page shows it: no number breaks over a line, and none stands on another line than its unit.</summary>
    private static string Shown(string text)
        => BeforeAUnit().Replace(Paragraph.Bound(PlainText.Clean(text)), "\u00a0")
            .Replace(PlainText.ThinSpace, PlainText.NarrowNoBreakSpace);

    [GeneratedRegex(
        @"(?<=[0-9]) (?=(%|°C|mPa·s|Pa·s|Pa|kg|g|mL|L|min|mm|cm|s|h|KU|rpm|1/min|1/s)(?![\p{L}0-9]))"
            + @"|(?<=±) (?=[0-9])|(?<=\b[kU]) (?==)|(?<=\b[kU] =) ",
        RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex BeforeAUnit();
}
