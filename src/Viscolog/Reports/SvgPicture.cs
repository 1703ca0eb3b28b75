using System.Collections.Frozen;
using System.Globalization;
using System.Xml;
using System.Xml.Linq;

namespace Viscolog.Reports;

/// <summary>A drawing that may stand in a document: shapes and text alone, nothing that runs, links or loads.</summary>
internal sealed class SvgPicture
{
    private static readonly FrozenSet<string> Elements = FrozenSet.ToFrozenSet(
        [
            "svg", "g", "defs", "clipPath", "title", "desc", "line", "polyline", "polygon", "path", "rect", "circle", "ellipse", "text",
            "tspan",
        ],
        StringComparer.Ordinal);

    private readonly XElement _root;

    private SvgPicture(XElement root) => _root = root;

    /// <summary>Whether it is less than half as high as wide.</summary>
    public bool IsLow { get; private init; }

    /// <summary>Takes a drawing in.</summary>
    /// <param name="bytes">An SVG file as the plot renderer makes it.</param>
    /// <exception cref="ArgumentException">It holds an element or attribute that has no place in a document.</exception>
    public static SvgPicture Of(byte[] bytes)
    {
        using var stream = new MemoryStream(bytes);
        using var reader = XmlReader.Create(
            stream,
            new() { DtdProcessing = DtdProcessing.Ignore, XmlResolver = null, IgnoreProcessingInstructions = true, IgnoreComments = true });
        var drawn = XElement.Load(reader);
        foreach (var element in drawn.DescendantsAndSelf())
        {
            Check(element);
        }

        var isLow = false;
        if (drawn.Attribute("viewBox") is null && Pixels(drawn, "width") is { } width && Pixels(drawn, "height") is { } height)
        {
            isLow = height < width / 2;
            drawn.SetAttributeValue("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {width} {height}"));
        }

        drawn.SetAttributeValue("width", null);
        drawn.SetAttributeValue("height", null);
        return new(drawn) { IsLow = isLow };
    }

    /// <summary>Writes it with an alternative in words.</summary>
    public void WriteTo(XmlWriter writer, string words)
    {
        var named = new XElement(_root);
        named.SetAttributeValue("role", "img");
        named.SetAttributeValue("aria-label", words);
        named.WriteTo(writer);
    }

    private static void Check(XElement element)
    {
        if (!Elements.Contains(element.Name.LocalName))
        {
            throw new ArgumentException($"a drawing holds no <{element.Name.LocalName}> here", nameof(element));
        }

        foreach (var attribute in element.Attributes())
        {
            var name = attribute.Name.LocalName;
            if (name.StartsWith("on", StringComparison.OrdinalIgnoreCase) || name.EndsWith("href", StringComparison.OrdinalIgnoreCase)
                || (attribute.Value.Contains("url(", StringComparison.OrdinalIgnoreCase)
                    && !attribute.Value.Contains("url(#", StringComparison.OrdinalIgnoreCase)))
            {
                throw new ArgumentException($"a drawing holds no {name} here", nameof(element));
            }
        }
    }

    private static double? Pixels(XElement element, string name)
        => double.TryParse(
            element.Attribute(name)?.Value.Replace("px", "", StringComparison.Ordinal), NumberStyles.Float, CultureInfo.InvariantCulture,
            out var value)
            ? value
            : null;
}
