using System.Text;
using System.Text.RegularExpressions;
using Viscolog.Labels;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Reports;

/// <summary>Every kind of paper in a real browser, where there is one.</summary>
public sealed partial class BrowserTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    /// <summary>360 px is a small telephone; nothing is to be pushed sideways to be read there.</summary>
    [Theory]
    [InlineData(360)]
    [InlineData(800)]
    public void No_paper_reaches_beyond_the_window(int width)
    {
        Browser.Need();
        var papers = Papers();
        var reaches = Browser.Reaches(_folder, width, [.. papers.Select(p => p.Page), "<p style=\"width: 900px\">too wide</p>"]);
        Assert.Equal(papers.Length + 1, reaches.Length);
        Assert.Equal(
            [], papers.Zip(reaches).Where(p => p.Second > width).Select(p => $"{p.First.Call}: {p.Second} px"), StringComparer.Ordinal);
        Assert.True(reaches[^1] >= 900);
    }

    /// <summary>A4 is 595 by 842 points, Letter 612 by 792 (ISO 216; ANSI/ASME Y14.1).</summary>
    [Theory]
    [InlineData("a4-3x8", 595, 842)]
    [InlineData("letter-2x3", 612, 792)]
    public void Labels_print_on_sheets_of_their_size(string sheet, int width, int height)
    {
        Browser.Need();
        Paper(
            "label",
            Checkout.Sample("lantern-gel-06.csv"),
            "--sheet",
            sheet,
            "--start",
            "2",
            "--copies",
            $"{LabelSheet.Find(sheet)!.Count}");
        var boxes = MediaBox().Matches(Encoding.Latin1.GetString(Browser.Print(_folder, _folder.Of("a.html"))));
        Assert.Equal(2, boxes.Count);
        Assert.All(boxes, b =>
        {
            Assert.Equal(width, Points(b.Groups["width"].Value), 1.0);
            Assert.Equal(height, Points(b.Groups["height"].Value), 1.0);
        });
    }

    private (string Call, string Page)[] Papers()
    {
        var runs = Directory.GetFiles(Path.Combine(Checkout.Root, "sample-runs"), "*.csv")
            .Concat(
                new[] { "pair", "methods", "checks" }.SelectMany(
                    f => Directory.GetFiles(Path.Combine(Checkout.Root, "sample-runs", f), "*.csv")))
            .Order(StringComparer.Ordinal);
        string[][] calls =
        [
            .. runs.SelectMany(run => new string[][] { ["report", run], ["label", run, "--sheet", "a4-2x2"] }),
            .. Directory.GetFiles(Path.Combine(Checkout.Root, "sample-runs", "checks"), "*.csv")
                .Select(run => new[] { "report", run, "--certificate" }),
            ["report", Path.Combine(Checkout.Root, "tests", "Viscolog.Tests", "Reports", "wall-gel-voids.csv")],
            ["batch", Checkout.Sample("lantern-gel-06.csv"), "--to", "10 L", "--density", "1.06", "--colour-yield", "12"],
            ["batch", Checkout.Sample("pair/thread-gel-02.csv"), "--to", "2 kg"],
            ["practice", "demo"],
            .. LabelSheet.All.Select(
                s => new[] { "label", Checkout.Sample("checks/lantern-gel-21.csv"), "--batch", "--sheet", s.Name, "--copies", "3" }),
        ];
        return calls.Select(call => (string.Join(' ', call.Select(Path.GetFileName)), Paper(call))).ToArray();
    }

    private string Paper(params string[] call)
    {
        var file = _folder.Of("a.html");
        var called = Called.With([.. call, "--quiet", "--force", "-o", file]);
        Assert.True(called.Code is 0 or 3, called.Error);
        return File.ReadAllText(file);
    }

    private static double Points(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    [GeneratedRegex(@"/MediaBox \[0 0 (?<width>[0-9.]+) (?<height>[0-9.]+)\]", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex MediaBox();
}
