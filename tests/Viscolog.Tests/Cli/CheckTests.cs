using System.Text.Json;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>The command <c>check</c>.</summary>
public sealed class CheckTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("viscolog-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    public static TheoryData<string, int> Samples => new()
    {
        { "lantern-gel-21", 0 },
        { "lantern-gel-22-short", 3 },
        { "lantern-gel-23-low-ph", 3 },
        { "harbour-gel-09-over", 3 },
    };

    [Fact]
    public void Every_sample_is_in_the_table()
        => Assert.Equal(
            Directory.GetFiles(Checkout.Sample("checks"), "*.csv").Select(f => Path.GetFileNameWithoutExtension(f)!)
                .Order(StringComparer.Ordinal),
            Samples.Select(row => row.Data.Item1).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Samples))]
    public void Samples_are_checked_as_stored(string name, int code)
    {
        var called = Called.With("check", Sample(name));
        Assert.Equal((code, ""), (called.Code, called.Error));
        ExpectedFile.Check($"cli/check-{name}.txt", called.Output);
    }

    [Fact]
    public void The_answer_in_JSON_has_the_fields_that_scripts_rely_on()
    {
        var called = Called.With("check", Sample("lantern-gel-22-short"), "--low", "7650", "--high", "10350", "--json");
        Assert.Equal(3, called.Code);
        using var document = JsonDocument.Parse(called.Output);
        var root = document.RootElement;
        Assert.Equal("viscolog.check/1", root.GetProperty("schema").GetString());
        Assert.Equal("reject", root.GetProperty("verdict").GetString());
        Assert.Equal(2.87, root.GetProperty("conformity_pct").GetDouble(), 0.005);
        Assert.Equal(3.13, root.GetProperty("degrees_of_freedom").GetDouble(), 0.05);
        Assert.Equal(6464, root.GetProperty("value_mpas").GetDouble(), 1.0);
        Assert.Equal(378.7, root.GetProperty("uncertainty_mpas").GetDouble(), 0.5);
        Assert.Equal(10.9, root.GetProperty("add_g").GetDouble(), 0.001);
        Assert.Contains("add", root.GetProperty("next").GetString(), StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Array, root.GetProperty("warnings").ValueKind);
        Assert.Equal("repeatability", root.GetProperty("parts")[0].GetProperty("part").GetString());
    }

    [Fact]
    public void A_specification_of_the_log_is_met_by_file_and_by_logged_run()
    {
        Assert.Equal(0, Called.In(_folder, "import", Checkout.Sample("materials"), Checkout.Sample("checks")).Code);
        foreach (var run in new[] { Sample("lantern-gel-23-low-ph"), "4" })
        {
            var called = Called.In(_folder, "check", run, "--spec", "lantern gel");
            Assert.Equal(3, called.Code);
            Assert.Contains("Raise the pH to 8.5 to 9.2 first", called.Output, StringComparison.Ordinal);
            Assert.Contains("3.5 %", called.Output, StringComparison.Ordinal);
        }

        // Without a specification named, the run's product tells it.
        Assert.Contains("Lantern gel:", Called.In(_folder, "check", "2").Output, StringComparison.Ordinal);
        var unknown = Called.In(_folder, "check", "2", "--spec", "Dusk glaze");
        Assert.Equal(2, unknown.Code);
        Assert.Contains("it has 'Harbour gel', 'Lantern gel'", unknown.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_needs_no_log_but_its_specification_does()
    {
        var nowhere = Path.Combine(_folder, "none");
        Assert.Equal(0, Called.In(nowhere, "check", Sample("lantern-gel-21"), "--low", "7650", "--high", "10350").Code);
        Assert.Equal(4, Called.In(nowhere, "check", Sample("lantern-gel-21"), "--spec", "Lantern gel").Code);
        Assert.False(Directory.Exists(nowhere));
    }

    [Theory]
    [InlineData("--low", "5")]
    [InlineData("--low", "9", "--high", "5")]
    [InlineData("--low", "5", "--high", "9", "--spec", "x")]
    [InlineData("--low", "5,5,5", "--high", "9")]
    public void Wrong_calls_end_with_one_line_and_1(params string[] options)
    {
        var called = Called.With(["check", Sample("lantern-gel-21"), .. options]);
        Assert.Equal((1, ""), (called.Code, called.Output));
        Assert.Single(called.Error.TrimEnd('\n').Split('\n'));
    }

    [Fact]
    public void In_ascii_it_prints_ascii()
    {
        var called = Called.With("check", Sample("lantern-gel-21"), "--ascii");
        called.IsAscii();
        Assert.DoesNotContain('?', called.Output);
    }

    private static string Sample(string name) => Checkout.Sample(Path.Combine("checks", name + ".csv"));
}
