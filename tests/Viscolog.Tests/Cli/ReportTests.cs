using System.Text.Json;
using System.Text.RegularExpressions;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>Batch sheets and run reports, as somebody asks for them.</summary>
public sealed partial class ReportTests : IDisposable
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);

    private readonly TemporaryFolder _folder = new();

    public static TheoryData<string, string> Sheets => new()
    {
        { "lantern-gel-06", "5 kg" },
        { "lantern-gel-07", "750 g" },
        { "harbour-gel-02-over", "20 kg" },
        { "dusk-glaze-06-decimal-comma", "5kg" },
        { "methods/flat-paint-krebs", "5 kg" },
        { "pair/thread-gel-02", "2 kg" },
    };

    public void Dispose() => _folder.Dispose();

    [Theory]
    [MemberData(nameof(Sheets))]
    public void A_batch_sheet_is_as_stored(string name, string size)
        => ExpectedFile.Check(
            $"cli/batch-{Path.GetFileName(name)}.txt", Done("batch", Checkout.Sample(name + ".csv"), "--to", size).Output);

    [Fact]
    public void A_batch_sheet_in_html_is_as_stored()
        => ExpectedFile.Check(
            "cli/batch-lantern-gel-06.html",
            Page("batch", Checkout.Sample("lantern-gel-06.csv"), "--to", "10 L", "--density", "1.06", "--colour-yield", "12"));

    [Theory]
    [InlineData("lantern-gel-06")]
    [InlineData("harbour-gel-02-over")]
    [InlineData("lantern-gel-08-read-early")]
    [InlineData("methods/shade-wash-cup")]
    [InlineData("pair/thread-gel-02")]
    public void A_run_report_is_as_stored(string name)
        => ExpectedFile.Check($"cli/report-{Path.GetFileName(name)}.txt", Done("report", Checkout.Sample(name + ".csv")).Output);

    [Fact]
    public void Voids_corrections_and_doubts_are_told_in_text_and_html()
    {
        var run = Path.Combine(Checkout.Root, "tests", "Viscolog.Tests", "Reports", "wall-gel-voids.csv");
        ExpectedFile.Check("cli/report-voids.txt", Done("report", run).Output);
        var page = Page("report", run);
        ExpectedFile.Check("cli/report-voids.html", page);
        Assert.Matches(
            "<tr class=\"void\">.*<s>26\u202f000</s>.*<td class=\"words\" data-name=\"remark\">void: scale read by eye; a digit too many",
            page);
        Assert.Contains("Row 8 reads", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_run_of_the_log_is_reported_with_its_own_row_numbers_and_its_identity()
    {
        var log = _folder.Of("log");
        Assert.Equal(0, Called.In(log, "import", Checkout.Sample("lantern-gel-06.csv")).Code);
        var report = Called.In(log, "report", "1");
        Assert.Equal((0, ""), (report.Code, report.Error));
        Assert.Contains("holds a peak", report.Output, StringComparison.Ordinal);
        Assert.Matches("run [0-9a-f-]{36}", report.Output.ReplaceLineEndings(" "));
        Assert.Equal(0, Called.In(log, "batch", "1", "--to", "2 kg").Code);
    }

    [Theory]
    [InlineData("lantern-gel-21")]
    [InlineData("lantern-gel-22-short")]
    [InlineData("harbour-gel-09-over")]
    public void A_certificate_is_as_stored_and_only_an_accepted_batch_gets_one(string name)
    {
        var output = Done("report", Checkout.Sample($"checks/{name}.csv"), "--certificate").Output;
        ExpectedFile.Check($"cli/certificate-{name}.txt", output);
        Assert.Equal(name == "lantern-gel-21", output.StartsWith("BATCH CERTIFICATE", StringComparison.Ordinal));
        Assert.Equal(name == "lantern-gel-21", output.Contains("Released by", StringComparison.Ordinal));
    }

    [Fact]
    public void A_certificate_goes_by_a_specification_of_the_log()
    {
        var log = _folder.Of("log");
        Assert.Equal(0, Called.In(log, "import", Checkout.Sample("checks"), Checkout.Sample("materials")).Code);
        var file = Checkout.Sample("checks/lantern-gel-21.csv");
        var page = _folder.Of("certificate.html");
        var called = Called.In(log, "report", file, "--certificate", "--spec", "lantern gel", "--quiet", "--out", page);
        Assert.Equal((0, ""), (called.Code, called.Error));
        var html = File.ReadAllText(page);
        Assert.Contains("3.5\u00a0% a reading with 52 degrees of freedom, from the repeatability given and these 3 "
            + "readings", html, StringComparison.Ordinal);
        Assert.Contains("<svg", html, StringComparison.Ordinal);
        Assert.Contains("from 7\u202f650 to 10\u202f350\u00a0mPa·s as specified by 'Lantern gel'", html, StringComparison.Ordinal);

        var unknown = Called.In(log, "report", file, "--certificate", "--spec", "Nowhere gel", "--quiet");
        Assert.Equal((2, ""), (unknown.Code, unknown.Output));
        Assert.Contains("no specification 'Nowhere gel'", unknown.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_certificate_in_html_is_as_stored()
        => ExpectedFile.Check(
            "cli/certificate-lantern-gel-21.html",
            Page("report", Checkout.Sample("checks/lantern-gel-21.csv"), "--certificate", "--low", "7650", "--high", "10350"));

    [Theory]
    [InlineData("--spec", "Lantern gel")]
    [InlineData("--low", "7000", "--high", "9000")]
    [InlineData("--certificate", "--target", "9000")]
    [InlineData("--certificate", "--low", "7000")]
    [InlineData("--certificate", "--low", "9000", "--high", "7000")]
    public void Options_that_do_not_go_together_are_a_wrong_call(params string[] options)
    {
        var called = Called.With(["report", Checkout.Sample("checks/lantern-gel-21.csv"), .. options]);
        Assert.Equal((1, ""), (called.Code, called.Output));
        Assert.Equal(1, called.Error.Count(c => c == '\n'));
    }

    [Fact]
    public void A_hostile_run_makes_no_markup()
    {
        const string evil = "<script>alert('x')</script>\u202E\"&";
        var file = _folder.Of("evil.csv");
        File.WriteAllText(
            file,
            $"# name: {evil}\n# base: {evil}\n# lot: {evil}\n# operator: {evil}\n# note: {evil}\n# base_g: 100\n"
                + "# thickener: T<b>; chemistry=clay\n# target_mpas: 1400\nthickener,added_g,wait_s,viscosity_mpas,temp_c,note,void\n"
                + $",,60,850,23,\"{evil.Replace("\"", "\"\"", StringComparison.Ordinal)}\",\nT<b>,0.5,60,9000,23,,{evil[..^2]}\n"
                + "T<b>,0.5,60,1100,23,,\nT<b>,0.4,60,1400,23,,\n,,120,1410,23,,\n");
        foreach (var args in new[] { new[] { "report", file }, ["batch", file, "--to", "1 kg"], ["report", file, "--certificate"] })
        {
            var page = Page(args);
            Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("T<b>", page, StringComparison.Ordinal);
            Assert.DoesNotContain('\u202E', page);
            Assert.Contains("&lt;script&gt;", page, StringComparison.Ordinal);
            Assert.DoesNotContain('\u202E', Done(args).Output);
        }
    }

    [Theory]
    [InlineData("5")]
    [InlineData("five kg")]
    [InlineData("5 mPas")]
    [InlineData("-5 kg")]
    [InlineData("0 kg")]
    [InlineData("0.5 g")]
    [InlineData("1e300 kg")]
    [InlineData("kg")]
    public void A_size_that_is_none_is_a_wrong_call(string size)
    {
        var called = Called.With("batch", Checkout.Sample("lantern-gel-06.csv"), "--to", size);
        Assert.Equal((1, ""), (called.Code, called.Output));
        Assert.Contains("expected a size with its unit", called.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_can_not_be_done_ends_with_2_and_one_line()
    {
        Assert.Contains("--density", Refused("batch", Checkout.Sample("lantern-gel-06.csv"), "--to", "5 L"), StringComparison.Ordinal);
        Assert.Contains(
            "gives no dose", Refused("batch", Checkout.Sample("dusk-glaze-05-flattening.csv"), "--to", "5 kg"), StringComparison.Ordinal);
        Assert.Contains(
            ".html, .txt or .xlsx",
            Refused("report", Checkout.Sample("lantern-gel-06.csv"), "--out", _folder.Of("a.pdf")),
            StringComparison.Ordinal);
        File.WriteAllText(_folder.Of("taken.html"), "mine");
        Assert.Contains(
            "already exists",
            Refused("report", Checkout.Sample("lantern-gel-06.csv"), "--out", _folder.Of("taken.html")),
            StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(_folder.Of("taken.html")));
    }

    [Fact]
    public void Json_says_what_a_sheet_says()
    {
        var root = JsonDocument.Parse(Done("batch", Checkout.Sample("lantern-gel-06.csv"), "--to", "5 kg", "--json").Output).RootElement;
        Assert.Equal("viscolog.batch/1", root.GetProperty("schema").GetString());
        Assert.Equal(5000, root.GetProperty("total_g").GetDouble(), 2.0);
        Assert.Equal(
            root.GetProperty("thickeners")[0].GetProperty("thickener_g").GetDouble(),
            root.GetProperty("steps").EnumerateArray().Last().GetProperty("so_far_g").GetDouble(),
            0.1);
        Assert.Equal(
            0.7,
            root.GetProperty("steps")[0].GetProperty("dose_pct").GetDouble() / root.GetProperty("thickeners")[0].GetProperty("dose_pct")
                .GetDouble(),
            0.01);
    }

    private static string Refused(params string[] args)
    {
        var called = Called.With(args);
        Assert.Equal((2, ""), (called.Code, called.Output));
        Assert.Equal(1, called.Error.Count(c => c == '\n'));
        return called.Error;
    }

    private static Called Done(params string[] args)
    {
        var called = Called.At(Noon, args);
        Assert.True(called.Code == 0 || (called.Code == 3 && args.Contains("--certificate", StringComparer.Ordinal)), called.Error);
        Assert.Empty(called.Error);
        return called;
    }

    /// <summary>
    /// The page that a call writes, a drawing's coordinates left out: those may differ in the last digit between processors.
    /// </summary>
    private string Page(params string[] args)
    {
        var file = _folder.Of($"{Guid.NewGuid():N}.html");
        var called = Called.At(Noon, [.. args, "--quiet", "--out", file]);
        Assert.True(called.Code == 0 || (called.Code == 3 && args.Contains("--certificate", StringComparer.Ordinal)), called.Error);
        return Drawing().Replace(File.ReadAllText(file), "<svg></svg>");
    }

    [GeneratedRegex("<svg.*?</svg>", RegexOptions.Singleline, 1000)]
    private static partial Regex Drawing();
}
