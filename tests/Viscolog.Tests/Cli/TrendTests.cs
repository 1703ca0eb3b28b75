using System.Text;
using System.Text.Json;
using Viscolog.Tests.Support;
using Viscolog.TrendFiles;

namespace Viscolog.Tests.Cli;

/// <summary>The command <c>trend</c>: files, products of the log, answers, pictures.</summary>
public sealed class TrendTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("viscolog-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void The_sample_is_charted_as_stored()
    {
        var called = Called.With("trend", Sample, "--baseline", "20");
        Assert.Equal((0, ""), (called.Code, called.Error));
        ExpectedFile.Check("cli/trend-lantern-gel-batches.txt", called.Output);
        var ascii = Called.With("trend", Sample, "--linear-scale", "--ascii");
        ascii.IsAscii();
        ExpectedFile.Check("cli/trend-ascii.txt", ascii.Output);
    }

    /// <summary>Montgomery, Introduction to Statistical Quality Control, 5th edition, pp. 232-235: viscosity of primer paint.</summary>
    [Fact]
    public void The_answer_in_JSON_has_the_published_limits_and_signal()
    {
        var path = Path.Combine(Checkout.Root, "tests", "Viscolog.Core.Tests", "Data", "G1_primer_paint_viscosity.csv");
        var root = Parse("trend", path, "--linear-scale", "--baseline", "20", "--low", "32", "--high", "36", "--json");
        Assert.Equal("viscolog.trend/1", root.GetProperty("schema").GetString());
        Assert.Equal("linear", root.GetProperty("scale").GetString());
        Assert.Equal(34.088, root.GetProperty("mean").GetDouble(), 1e-3);
        Assert.Equal(0.572632, root.GetProperty("moving_range_mean").GetDouble(), 1e-6);
        Assert.Equal(35.611, root.GetProperty("upper").GetDouble(), 1e-3);
        Assert.Equal(32.565, root.GetProperty("lower").GetDouble(), 1e-3);
        var signal = Assert.Single(root.GetProperty("signals").EnumerateArray());
        Assert.Equal(
            ("4", "one point beyond the limits"), (signal.GetProperty("batch").GetString(), signal.GetProperty("rule").GetString()));
        Assert.Equal((36 - 34.088) / (3 * 0.572632 / 1.128), root.GetProperty("cpk").GetDouble(), 1e-4);
        // c ± 1.96·√(1/(9n) + c²/(2ν)) as docs/science.md has it, ν about 0.61·(n − 1).
        var interval = root.GetProperty("cpk_interval");
        Assert.Equal(0.726, interval.GetProperty("low").GetDouble(), 1e-3);
        Assert.Equal(1.785, interval.GetProperty("high").GetDouble(), 1e-3);
        var without = Parse("trend", path, "--linear-scale", "--leave-out", "4", "--json");
        Assert.Equal(33.9895, without.GetProperty("mean").GetDouble(), 1e-3);
        Assert.Equal(35.2247, without.GetProperty("upper").GetDouble(), 1e-3);
        Assert.False(without.TryGetProperty("cpk", out _));
    }

    [Fact]
    public void A_product_of_the_log_is_charted_by_its_batches()
    {
        Assert.Equal(
            0,
            Called.In(
                _folder,
                "import",
                Checkout.Sample("materials"),
                Checkout.Sample("checks"),
                Checkout.Sample("lantern-gel-06.csv")).Code);
        var called = Called.In(_folder, "trend", "--product", "Lantern gel", "--json");
        Assert.Equal((0, ""), (called.Code, called.Error));
        using var document = JsonDocument.Parse(called.Output);
        var root = document.RootElement;
        Assert.Equal(
            (3, "log", "Lantern gel"),
            (root.GetProperty("batches").GetInt32(), root.GetProperty("scale").GetString(), root.GetProperty("name").GetString()));
        Assert.True(root.TryGetProperty("cpk", out _));
        Assert.Equal(2, Called.In(_folder, "trend", "--product", "Harbour gel").Code);
        Assert.Equal(2, Called.In(_folder, "trend", "--product", "Dusk glaze").Code);
    }

    [Theory]
    [InlineData("t.svg", "<?xml")]
    [InlineData("t.pdf", "%PDF")]
    [InlineData("t.png", "\u0089PNG")]
    public void A_picture_is_written_in_the_format_of_its_ending_and_not_over_another(string name, string begins)
    {
        var path = Path.Combine(_folder, name);
        Assert.Equal(0, Called.With("trend", Sample, "--out", path).Code);
        var bytes = File.ReadAllBytes(path);
        Assert.StartsWith(begins, Encoding.Latin1.GetString(bytes).TrimStart('\u00ef', '\u00bb', '\u00bf'), StringComparison.Ordinal);
        Assert.Equal(2, Called.With("trend", Sample, "-o", path).Code);
        Assert.Equal(0, Called.With("trend", Sample, "-o", path, "--force").Code);
        Assert.Equal(bytes, File.ReadAllBytes(path));
    }

    [Fact]
    public void The_picture_names_quantity_batches_and_limits()
    {
        var path = Path.Combine(_folder, "t.svg");
        Assert.Equal(0, Called.With("trend", Sample, "-o", path).Code);
        var text = File.ReadAllText(path);
        Assert.All(
            new[] { "Viscosity, mPa·s", "Moving range, %", "Lantern gel", "limits from 20 batches", "signal", "wanted", "Cpk" },
            word => Assert.Contains(word, text, StringComparison.Ordinal));
    }

    [Theory]
    [
        InlineData(
            "batch,viscosity_mpas\n1,900\n2,x\n", "line 3, column viscosity_mpas: read 'x', expected a number in mPa·s, at least 0.001"),
    ]
    [InlineData("batch,viscosity_mpas\n1,900\n2,\n", "line 3, column viscosity_mpas: read nothing, expected the batch's value")]
    [InlineData("batch,viscosity_mpas\n1,900\n,800\n", "line 3, column batch: read nothing, expected the batch's name")]
    [InlineData("batch,value\n1,900\n2,NaN\n", "line 3, column value: read 'NaN', expected a number, with a decimal point")]
    [InlineData("run,value\n1,900\n", "line 1: read 'run,value', expected a header row with the column batch")]
    [InlineData("batch\n1\n", "expected a column of values besides batch")]
    [InlineData("batch,value,value\n1,2,3\n", "each column once")]
    [InlineData("batch,value\n1,2,3\n", "line 2: read 3 fields, expected at most 2")]
    [InlineData("batch;value\n1;2.5\n", "decimal comma")]
    [InlineData("batch,value\n", "read no values, expected a row for each batch")]
    [InlineData("# low: 5\n# high: 3\nbatch,value\n1,2\n", "low below high")]
    [InlineData("batch,value\n1,2\n2,3\n", "limits need 3 batches or more")]
    [InlineData("batch,value\n1,2\n2,2\n3,2\n", "no scatter")]
    [InlineData("", "an empty file")]
    public void Bad_files_are_refused_with_what_is_expected(string text, string said)
    {
        var called = Called.With("trend", Write(text));
        Assert.Equal((2, ""), (called.Code, called.Output));
        Assert.Contains(said, Assert.Single(called.Error.TrimEnd('\n').Split('\n')), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("trend")]
    [InlineData("trend", "f.csv", "--product", "x")]
    [InlineData("trend", "f.csv", "--log-scale", "--linear-scale")]
    public void Wrong_calls_end_with_1(params string[] args) => Assert.Equal(1, Called.With(args).Code);

    [Fact]
    public void Void_rows_are_passed_over_and_the_column_can_be_named()
    {
        var path = Write("batch;ph;viscosity_mpas;void\n1;8,8;9000;\n2;8,7;1;misread\n3;8,9;9100;\n4;8,8;8900;\n");
        var root = Parse("trend", path, "--json");
        Assert.Equal(
            (3, "log", "mPa·s"),
            (root.GetProperty("batches").GetInt32(), root.GetProperty("scale").GetString(), root.GetProperty("unit").GetString()));
        Assert.Contains(root.GetProperty("warnings").EnumerateArray(), w => w.GetString()!.Contains("misread", StringComparison.Ordinal));
        Assert.Equal("linear", Parse("trend", path, "--column", "ph", "--json").GetProperty("scale").GetString());
        Assert.Equal(2, Called.With("trend", path, "--column", "ku").Code);
    }

    [Fact]
    public void The_example_and_every_key_stand_in_the_description()
    {
        var doc = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "file-formats.md"));
        var section =
            doc[doc.IndexOf("## Trend file", StringComparison.Ordinal)..doc.IndexOf("## Answers in JSON", StringComparison.Ordinal)];
        Assert.Equal(
            (0, ""),
            (
                Called.With("trend", Write(section.Split("```")[1].TrimStart())).Code,
                Called.With("trend", Write(section.Split("```")[1].TrimStart())).Error));
        Assert.All(
            TrendHeader.Keys.Concat(TrendColumns.Others).Append(TrendColumns.Value),
            name => Assert.Contains($"`{name}`", section, StringComparison.Ordinal));
    }

    /// <summary>The longest rule looks at eight points: with fewer, that none is broken is no verdict.</summary>
    [Theory]
    [InlineData(3, "TOO FEW BATCHES")]
    [InlineData(7, "TOO FEW BATCHES")]
    [InlineData(8, "IN CONTROL")]
    public void Fewer_batches_than_the_longest_rule_looks_at_are_not_called_in_control(int batches, string headline)
    {
        var rows = Enumerable.Range(1, batches).Select(i => FormattableString.Invariant($"{i:00},{9000 + (i % 2 * 100)}\n"));
        var called = Called.With("trend", Write("# name: gel\nbatch,viscosity_mpas\n" + string.Concat(rows)));
        Assert.Contains("  " + headline, called.Output, StringComparison.Ordinal);
    }

    private static string Sample => Checkout.Sample(Path.Combine("trend", "lantern-gel-batches.csv"));

    private string Write(string text)
    {
        var path = Path.Combine(_folder, "trend.csv");
        File.WriteAllText(path, text);
        return path;
    }

    private static JsonElement Parse(params string[] args)
    {
        var called = Called.With(args);
        Assert.Equal(0, called.Code);
        using var document = JsonDocument.Parse(called.Output);
        return document.RootElement.Clone();
    }
}
