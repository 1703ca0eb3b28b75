using System.Text.RegularExpressions;
using System.Xml.Linq;
using Viscolog.Labels;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Labels;

/// <summary>Labels as somebody asks for them: what stands on them, where on the sheet, how many.</summary>
public sealed partial class LabelTests : IDisposable
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("label-pot", "lantern-gel-06")]
    [InlineData("label-pot-cup", "methods/shade-wash-cup")]
    [InlineData("label-pot-two-thickeners", "pair/thread-gel-02")]
    [InlineData("label-batch", "checks/lantern-gel-21", "--batch")]
    [InlineData("label-batch-rejected", "checks/harbour-gel-09-over", "--batch", "--low", "5100", "--high", "6900")]
    public void A_label_in_words_is_as_stored(string stored, string run, params string[] options)
        => ExpectedFile.Check($"cli/{stored}.txt", Done(["label", Checkout.Sample(run + ".csv"), .. options]).Output);

    [Fact]
    public void A_page_of_labels_is_as_stored()
        => ExpectedFile.Check(
            "cli/label-batch.html", Drawing().Replace(Page("checks/lantern-gel-21", "--batch", "--sheet", "a4-2x4"), "<svg></svg>"));

    /// <summary>
    /// A page is filled along the rows; the places before the first stay free, and only the rest goes on to the next sheet.
    /// </summary>
    [Theory]
    [InlineData("a4-3x8", 1, 1, "L")]
    [InlineData("a4-2x2", 3, 3, "__LL|L")]
    [InlineData("letter-2x3", 6, 2, "_____L|L")]
    [InlineData("a4-2x2", 1, 9, "LLLL|LLLL|L")]
    public void Labels_take_the_places_that_are_free(string sheet, int start, int copies, string places)
    {
        var page = Page("lantern-gel-06", "--sheet", sheet, "--start", $"{start}", "--copies", $"{copies}");
        Assert.Equal(
            places,
            string.Join(
                '|',
                Html(page).Descendants("section")
                    .Select(s => string.Concat(s.Elements().Select(e => e.Name.LocalName == "article" ? 'L' : '_')))));
    }

    /// <summary>ISO 216: A4 is 210 × 297 mm, A6 105 × 148 mm; Letter is 8.5 × 11 inches of 25.4 mm (ANSI/ASME Y14.1).</summary>
    [Fact]
    public void Every_sheet_fits_its_page_and_has_a_name_of_its_own()
    {
        Assert.Equal((210, 297), (PageSize.A4.Width, PageSize.A4.Height));
        Assert.Equal(8.5 * 25.4, PageSize.Letter.Width, 9);
        Assert.Equal(11 * 25.4, PageSize.Letter.Height, 9);
        Assert.All(LabelSheet.All, s =>
        {
            Assert.True(s.Left >= 0 && s.Top >= 0, s.Name);
            Assert.Equal(s.Page.Width, (2 * s.Left) + (s.Columns * s.Width) + ((s.Columns - 1) * s.Gap), 9);
            Assert.Equal(s.Page.Height, (2 * s.Top) + (s.Rows * s.Height), 9);
            Assert.True(LabelPage.CodeSide(s) + (2 * LabelPage.Edge) < s.Height, s.Name);
            Assert.Same(s, LabelSheet.Find(s.Name.ToUpperInvariant()));
        });
        Assert.Contains(LabelSheet.All, s => (s.Width, s.Height) == (105, 148));
    }

    [Theory]
    [InlineData("--sheet", "a4-9x9")]
    [InlineData("--start", "0")]
    [InlineData("--start", "25")]
    [InlineData("--start", "x")]
    [InlineData("--sheet", "a4-2x2", "--start", "5")]
    [InlineData("--copies", "0")]
    [InlineData("--copies", "1001")]
    [InlineData("--low", "5", "--high", "6")]
    [InlineData("--batch", "--low", "5")]
    public void What_can_not_be_asked_is_a_wrong_call(params string[] options)
    {
        var called = Called.With(["label", Checkout.Sample("lantern-gel-06.csv"), .. options]);
        Assert.Equal((1, ""), (called.Code, called.Output));
        Assert.Equal(1, called.Error.Count(c => c == '\n'));
    }

    [Fact]
    public void Without_limits_there_is_no_label_of_a_batch_and_other_endings_are_refused()
    {
        File.WriteAllText(_folder.Of("pot.csv"), "# base_g: 100\nviscosity_mpas\n850\n");
        Assert.Contains("nothing to check against", Refused(_folder.Of("pot.csv"), "--batch"), StringComparison.Ordinal);
        Assert.Contains(".html or .txt", Refused(_folder.Of("pot.csv"), "-o", _folder.Of("a.pdf")), StringComparison.Ordinal);
        Assert.Contains("no UUID yet", Called.With("label", _folder.Of("pot.csv")).Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<script>alert('x')</script>\u202E\"&")]
    [InlineData("</style><b>x</b>")]
    [InlineData("@page { size: 1mm } body { display: none }")]
    public void A_hostile_or_endless_text_makes_no_markup(string evil)
    {
        var outlines = new List<string>();
        foreach (var text in new[] { "plain", evil, string.Concat(Enumerable.Repeat(evil, 200)) })
        {
            var file = _folder.Of("evil.csv");
            File.WriteAllText(
                file,
                $"# name: {text}\n# base: {text}\n# lot: {text}\n# base_g: 100\n# thickener: T1\n"
                    + "thickener,added_g,wait_s,viscosity_mpas,temp_c\nT1,0.5,60,9000,23\n");
            var page = _folder.Of("evil.html");
            Assert.Equal(0, Called.At(Noon, "label", file, "--quiet", "--force", "-o", page).Code);
            var html = Html(File.ReadAllText(page));
            outlines.Add(string.Concat(html.Descendants().Select(e => e.Name.LocalName + ' ')));
            Assert.DoesNotContain('\u202E', File.ReadAllText(page));
        }

        Assert.Single(outlines.Distinct(StringComparer.Ordinal));
    }

    private static string Refused(string file, params string[] options)
    {
        var called = Called.With(["label", file, .. options, "--quiet"]);
        Assert.Equal((2, ""), (called.Code, called.Output));
        Assert.Equal(1, called.Error.Count(c => c == '\n'));
        return called.Error;
    }

    private static Called Done(params string[] args)
    {
        var called = Called.At(Noon, [.. args, "--quiet"]);
        Assert.True((called.Code, called.Error) == (0, ""), called.Error);
        return called;
    }

    private string Page(string run, params string[] options)
    {
        var file = _folder.Of("labels.html");
        Done(["label", Checkout.Sample(run + ".csv"), .. options, "-o", file]);
        return File.ReadAllText(file);
    }

    private static XElement Html(string page) => XElement.Parse(page[(page.IndexOf('>', StringComparison.Ordinal) + 1)..]);

    [GeneratedRegex("<svg.*?</svg>", RegexOptions.Singleline, 1000)]
    private static partial Regex Drawing();
}
