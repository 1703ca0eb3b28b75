using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Viscolog.Reports;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Reports;

/// <summary>Documents as files: whatever a text holds, it stays text.</summary>
public sealed partial class PaperTests
{
    private static readonly DateOnly Day = new(2026, 11, 25);

    public static TheoryData<string> Hostile =>
    [
        "<script>alert(1)</script>",
        "</style><script>alert(1)</script>",
        "<img src=x onerror=alert(1)>",
        "\"><svg onload=alert(1)>",
        "' onmouseover='alert(1)",
        "&lt;b&gt; &amp; &#x3c;script&#x3e;",
        "<!-- --> ]]> <![CDATA[",
        "javascript:alert(1)",
        "a\0b\u0001c\u001b[31md\u007f\u0085e",
        "left \u202Etfel\u202C \u2066x\u2069 \u200F",
        "\uD800 half a surrogate \uDC00",
        "line\r\nbreak\tand\u2028more",
        new string('x', 5000),
        "Гель 漆ゲル ﷺ 🎨",
        "@page { size: 1mm } } body { display: none }",
        "\u0000\u202E",
    ];

    [Theory]
    [MemberData(nameof(Hostile))]
    public void A_hostile_text_makes_no_markup(string text)
    {
        var (harmless, hostile) = (Html(Everything("plain")), Html(Everything(text)));
        Assert.Equal(Outline(harmless), Outline(hostile));
        Assert.DoesNotMatch(Unshowable(), Encoding.UTF8.GetString(HtmlPaper.Write(Everything(text))));
        var words = Encoding.UTF8.GetString(HtmlPaper.Write(Everything(text)));
        Assert.DoesNotContain("<script", words, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", words, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [MemberData(nameof(Hostile))]
    public void A_hostile_text_stays_on_its_lines_in_plain_text(string text)
    {
        var plain = TextPaper.Write(Everything(text));
        Assert.DoesNotMatch(Unshowable(), plain);
        Assert.EndsWith("\n", plain, StringComparison.Ordinal);
    }

    [Fact]
    public void Html_needs_no_other_file_and_runs_nothing()
    {
        var page = Html(Everything("plain"));
        Assert.DoesNotContain(
            page.Descendants(),
            e => e.Name.LocalName is "script" or "link" or "img" or "iframe" or "object" or "embed" or "form" or "base");
        Assert.DoesNotContain(
            page.Descendants().Attributes(),
            a => a.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase) || a.Name.LocalName is "href" or "src");
        Assert.DoesNotContain("url(", PaperStyle.Sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("@import", PaperStyle.Sheet, StringComparison.Ordinal);
        Assert.DoesNotContain(PaperStyle.Sheet, c => c is '<' or '>' or '&');
        Assert.Contains(
            page.Descendants("meta"),
            m => m.Attribute("content")?.Value.StartsWith("default-src 'none'", StringComparison.Ordinal) == true);
    }

    /// <summary>U+202F and U+00A0 hold a line together (Unicode Standard Annex 14, class GL).</summary>
    [Theory]
    [InlineData("10\u2009350 mPa·s", "10\u202f350\u00a0mPa·s")]
    [InlineData("U = 440 mPa·s, k = 2", "U\u00a0=\u00a0440\u00a0mPa·s, k\u00a0=\u00a02")]
    [InlineData("8\u2009770 ± 490 mPa·s", "8\u202f770\u00a0±\u00a0490\u00a0mPa·s")]
    [InlineData("23 °C and 4 % of 5 kg in 15 s", "23\u00a0°C and 4\u00a0% of 5\u00a0kg in 15\u00a0s")]
    [InlineData("3 samples, 2 guards", "3 samples, 2 guards")]
    public void No_number_breaks_over_a_line_in_html(string text, string shown)
        => Assert.Contains(
            $"<p>{shown}</p>",
            Encoding.UTF8.GetString(HtmlPaper.Write(new("a", "b", Day) { Blocks = [new Block.Prose(text)] })),
            StringComparison.Ordinal);

    [Theory]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>")]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>")]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'><a href='x'/></svg>")]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'><foreignObject/></svg>")]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'><rect style='fill: url(http://x/y)'/></svg>")]
    public void A_drawing_that_does_more_than_draw_is_refused(string svg)
        => Assert.Throws<ArgumentException>(() => SvgPicture.Of(Encoding.UTF8.GetBytes(svg)));

    [Fact]
    public void The_ending_decides_the_format_and_nothing_is_overwritten_unasked()
    {
        using var folder = new TemporaryFolder();
        var paper = Everything("plain");
        Assert.NotNull(PaperFile.Write(paper, folder.Of("a.html"), force: false).Made);
        Assert.NotNull(PaperFile.Write(paper, folder.Of("a.txt"), force: false).Made);
        Assert.StartsWith("<!DOCTYPE html", File.ReadAllText(folder.Of("a.html")), StringComparison.Ordinal);
        Assert.Equal(TextPaper.Write(paper), File.ReadAllText(folder.Of("a.txt")));

        File.WriteAllText(folder.Of("mine.html"), "mine");
        Assert.Contains("already exists", PaperFile.Write(paper, folder.Of("mine.html"), force: false).Reason, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(folder.Of("mine.html")));
        Assert.NotNull(PaperFile.Write(paper, folder.Of("mine.html"), force: true).Made);

        Assert.Contains(".html, .txt or .xlsx", PaperFile.Write(paper, folder.Of("a.doc"), force: false).Reason, StringComparison.Ordinal);
        Assert.Contains("does not exist", PaperFile.Write(paper, folder.Of("none/a.html"), force: false).Reason, StringComparison.Ordinal);
        Assert.Equal(["a.html", "a.txt", "mine.html"], folder.Names);
    }

    /// <summary>A document with a text in every place that takes one.</summary>
    private static Paper Everything(string text) => new(text, text, Day)
    {
        Subtitle = text,
        Foot = text,
        Blocks =
        [
            new Block.Heading(text),
            new Block.Prose(text) { Lead = text },
            new Block.Result(text, text, ResultWeight.Good),
            new Block.Facts([new(text, text), Fact.Blank(text)]),
            new Block.Points([text, text]),
            new Block.Grid(
                [new(text), new(text, GridFill.Numbers), new(text, GridFill.Blank)],
                [
                    GridRow.Of(text, text, text),
                    GridRow.Of(text, text, text) with { IsStruck = true },
                    GridRow.Of(text, text, "") with { IsTotal = true },
                ]),
            new Block.Drawing(
                SvgPicture.Of(Encoding.UTF8.GetBytes("<svg xmlns='http://www.w3.org/2000/svg' width='10' height='10'><rect/></svg>")),
                text),
            new Block.Signatures([text, text]),
        ],
    };

    private static XElement Html(Paper paper)
    {
        var text = Encoding.UTF8.GetString(HtmlPaper.Write(paper));
        return XElement.Parse(text[(text.IndexOf('>', StringComparison.Ordinal) + 1)..]);
    }

    /// <summary>Elements and attributes without their texts.</summary>
    private static string Outline(XElement element)
        => $"<{element.Name.LocalName} {string.Join(' ', element.Attributes().Select(a => a.Name.LocalName))}>"
            + $"{string.Concat(element.Elements().Select(Outline))}</>";

    [
        GeneratedRegex(
            "[\\u0000-\\u0009\\u000B-\\u001F\\u007F-\\u009F\\u200B-\\u200F\\u2028-\\u202E\\u2066-\\u2069]", RegexOptions.None, 1000),
    ]
    private static partial Regex Unshowable();
}
