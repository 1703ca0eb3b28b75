using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Viscolog.Plots.Oxy;

namespace Viscolog.Tests.Support;

/// <summary>What stands where in a drawn SVG, read from the file itself: its texts and its marks.</summary>
internal sealed partial class DrawnSvg
{
    /// <summary>A closed shape larger than this is a region, not a mark.</summary>
    private const double MostMark = 26;

    /// <summary>The least height and width of a mark: what is flatter is the end of a bar.</summary>
    private const double LeastMark = 4;

    /// <summary>Parts of the size of a font above and below its base line, DejaVu Sans' capitals and descenders.</summary>
    private const double Above = 0.76;
    private const double Below = 0.24;

    private static readonly PixelMeasurer Measurer = new(720, 520);

    public DrawnSvg(byte[] svg)
    {
        using var reader = System.Xml.XmlReader.Create(
            new MemoryStream(svg), new() { DtdProcessing = System.Xml.DtdProcessing.Ignore, XmlResolver = null });
        var elements = XDocument.Load(reader).Descendants().ToList();
        Texts = [.. elements.Where(e => e.Name.LocalName == "text").Select(Text)];
        Marks = [.. elements.Select(Mark).OfType<Box>()
            .Where(b => b.Width < MostMark && b.Height < MostMark && b.Width > LeastMark && b.Height > LeastMark)];
    }

    public IReadOnlyList<(string Text, Box Box)> Texts { get; }

    public IReadOnlyList<Box> Marks { get; }

    /// <summary>Texts that cover one another or a mark, in words.</summary>
    public IEnumerable<string> Overlaps()
    {
        foreach (var (i, (text, box)) in Texts.Index())
        {
            foreach (var (other, at) in Texts.Skip(i + 1).Where(o => o.Box.Meets(box)))
            {
                yield return $"'{text}' and '{other}' at {box} and {at}";
            }

            foreach (var mark in Marks.Where(m => m.Meets(box)))
            {
                yield return $"'{text}' at {box} and a mark at {mark}";
            }
        }
    }

    private static (string Text, Box Box) Text(XElement element)
    {
        double Number(string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
        var place = Place().Match(element.Attribute("transform")!.Value);
        var (x, y) = (Part(place, "x"), Part(place, "y"));
        var size = Number("font-size");
        var width = Measurer.MeasureText(element.Value, "DejaVu Sans", size, Number("font-weight")).Width;
        var left = element.Attribute("text-anchor")!.Value switch { "end" => -width, "middle" => -width / 2, _ => 0 };
        return (element.Value, place.Groups["turned"].Success
            ? new(x - (Above * size), y - left - width, x + (Below * size), y - left)
            : new(x + left, y - (Above * size), x + left + width, y + (Below * size)));
    }

    private static Box? Mark(XElement element)
    {
        double Number(string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
        switch (element.Name.LocalName)
        {
            case "ellipse":
                return new(
                    Number("cx") - Number("rx"),
                    Number("cy") - Number("ry"),
                    Number("cx") + Number("rx"),
                    Number("cy") + Number("ry"));
            case "polygon":
                double[] all = [.. element.Attribute("points")!.Value.Split(' ', ',').Where(p => p.Length > 0)
                    .Select(p => double.Parse(p, CultureInfo.InvariantCulture))];
                double[] xs = [.. all.Where((_, i) => i % 2 == 0)], ys = [.. all.Where((_, i) => i % 2 == 1)];
                return new(xs.Min(), ys.Min(), xs.Max(), ys.Max());
            case "rect" when element.Attribute("style") is { } style && !style.Value.Contains("fill-opacity", StringComparison.Ordinal):
                return new(Number("x"), Number("y"), Number("x") + Number("width"), Number("y") + Number("height"));
            default:
                return null;
        }
    }

    private static double Part(Match match, string group) => double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^translate\((?<x>[-\d.E]+),(?<y>[-\d.E]+)\)(?<turned> rotate\(-90\))?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Place();

    /// <summary>A box in px.</summary>
    internal sealed record Box(double Left, double Top, double Right, double Bottom)
    {
        /// <summary>What may touch without covering, in px.</summary>
        private const double Touch = 0.5;

        public double Width => Right - Left;

        public double Height => Bottom - Top;

        public bool Meets(Box other) => Left + Touch < other.Right && other.Left + Touch < Right
            && Top + Touch < other.Bottom && other.Top + Touch < Bottom;

        public override string ToString() => FormattableString.Invariant($"({Left:0},{Top:0} {Right:0},{Bottom:0})");
    }
}
