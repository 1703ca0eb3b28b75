using System.Text.Json;
using System.Xml.Linq;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>The sample run with two thickeners, through every command that reads one.</summary>
public sealed class PairSampleTests
{
    private static readonly string Sample = Checkout.Sample(Path.Combine("pair", "thread-gel-02.csv"));

    [Theory]
    [InlineData("advise")]
    [InlineData("fit", "--at", "1.2", "--quiet")]
    public void Output_is_as_stored(string command, params string[] options)
    {
        var called = Called.With([command, Sample, .. options]);
        Assert.Equal((0, ""), (called.Code, called.Error));
        ExpectedFile.Check($"cli/{command}-thread-gel-02.txt", called.Output);
    }

    [Fact]
    public void Ascii_is_ascii() => Called.With("fit", Sample, "--ascii", "--quiet").IsAscii();

    [Fact]
    public void Advice_in_json_has_both()
    {
        var root = Parse("advise", Sample, "--json");
        Assert.Equal("viscolog.advice/1", root.GetProperty("schema").GetString());
        Assert.Equal("add", root.GetProperty("action").GetString());
        // What the same advice prints as text, cli/advise-thread-gel-02.txt.
        Assert.Equal([34, 25.6, 45.3], Estimate(root.GetProperty("expected_string_mm")));
        Assert.Equal([21.1, 17.6, 24.8], Estimate(root.GetProperty("now_string_mm")));
        string[] chances = ["chance_both_pct", "chance_in_band_pct", "chance_over_string_pct"];
        Assert.Equal([3.7, 5.0, 2.9], chances.Select(f => Math.Round(root.GetProperty(f).GetDouble(), 1)));
        var plan = root.GetProperty("plan").EnumerateArray();
        Assert.Equal([2, 2], plan.Select(p => p.GetProperty("additions").GetInt32()));
        Assert.Equal([("Apse", 0.37), ("Clew", 0.31)], plan.Select(p => (Text(p, "thickener"), p.GetProperty("about_pct").GetDouble())));
        Assert.Equal("Apse", root.GetProperty("thickener").GetString());
    }

    [Fact]
    public void Fit_in_json_has_both_models()
    {
        var root = Parse("fit", Sample, "--json", "--at", "1.2");
        Assert.Equal("Clew", root.GetProperty("pair").GetProperty("body_thickener").GetString());
        Assert.Equal(5.2, root.GetProperty("pair").GetProperty("string").GetProperty("base").GetProperty("value").GetDouble(), 0.05);
        Assert.Equal(1.2, root.GetProperty("pair").GetProperty("string_at")[0].GetProperty("dose_pct").GetDouble());
        Assert.Equal(7863, root.GetProperty("at")[0].GetProperty("median_mpas").GetDouble(), 10.0);
    }

    [Theory]
    [InlineData("dose")]
    [InlineData("map")]
    public void Pictures_are_written_in_every_format(string kind)
    {
        using var folder = new TemporaryFolder();
        foreach (var ending in new[] { "svg", "pdf", "png" })
        {
            var called = Called.With("plot", Sample, "--kind", kind, "-o", folder.Of($"{kind}.{ending}"));
            Assert.Equal((0, ""), (called.Code, called.Error));
            Assert.True(new FileInfo(folder.Of($"{kind}.{ending}")).Length > 2000);
        }

        var svg = XDocument.Load(folder.Of($"{kind}.svg"));
        Assert.Contains("Thread gel 02", svg.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("settling", "--kind dose or --kind map")]
    [InlineData("map", "two thickeners", "lantern-gel-07.csv")]
    public void Kinds_that_do_not_fit_are_refused(string kind, string reason, string? sample = null)
    {
        using var folder = new TemporaryFolder();
        var called = Called.With("plot", sample is null ? Sample : Checkout.Sample(sample), "--kind", kind, "-o", folder.Of("x.svg"));
        Assert.Equal(2, called.Code);
        Assert.Contains(reason, called.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Runs_are_compared_by_dose_cost_and_water()
    {
        using var folder = new TemporaryFolder();
        var log = folder.Of("log");
        Assert.Equal(0, Called.In(log, "import", Sample, Checkout.Sample("harbour-gel-02-over.csv"), "--log", log).Code);
        var called = Called.In(log, "runs", "--compare", "--base", "Lodge", "--target", "9000");
        Assert.Equal((0, ""), (called.Code, called.Error));
        ExpectedFile.Check("cli/runs-compare.txt", called.Output);
        using var document = JsonDocument.Parse(
            Called.In(log, "runs", "--compare", "--base", "Lodge", "--target", "9000", "--json").Output);
        Assert.Equal("viscolog.compare/1", document.RootElement.GetProperty("schema").GetString());
        Assert.Equal(2, document.RootElement.GetProperty("candidates").GetArrayLength());
        var bad = Called.In(log, "runs", "--compare", "--string", "40-30");
        Assert.Equal(2, bad.Code);
    }

    private static string Text(JsonElement of, string field) => of.GetProperty(field).GetString()!;

    private static double[] Estimate(JsonElement estimate)
        => [.. new[] { "median", "low", "high" }.Select(f => Math.Round(estimate.GetProperty(f).GetDouble(), 1))];

    private static JsonElement Parse(params string[] args)
    {
        var called = Called.With(args);
        Assert.Equal((0, ""), (called.Code, called.Error));
        using var document = JsonDocument.Parse(called.Output);
        return document.RootElement.Clone();
    }
}
