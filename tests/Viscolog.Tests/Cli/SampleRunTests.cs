using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>Every sample run, through every command that reads one.</summary>
public sealed class SampleRunTests
{
    public static TheoryData<string, string> Advised => new()
    {
        { "clear-jelly-03-low-range", "WAIT" },
        { "dusk-glaze-05-flattening", "STOP ADDING" },
        { "dusk-glaze-06-decimal-comma", "STOP. The pot is in band" },
        { "harbour-gel-02-over", "LET DOWN" },
        { "lantern-gel-06", "STOP. The pot is in band" },
        { "lantern-gel-07", "ADD" },
        { "lantern-gel-08-read-early", "WAIT" },
    };

    public static TheoryData<string> Names => [.. Advised.Select(row => row.Data.Item1)];

    [Fact]
    public void Every_sample_run_is_in_the_table()
        => Assert.Equal(
            Directory.GetFiles(Path.Combine(Checkout.Root, "sample-runs"), "*.csv").Select(f => Path.GetFileNameWithoutExtension(f)!)
                .Order(StringComparer.Ordinal),
            Advised.Select(row => row.Data.Item1).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Advised))]
    public void Advice_is_as_stored(string name, string headline)
    {
        var called = Called.With("advise", Checkout.Sample(name + ".csv"));
        Assert.Equal((0, ""), (called.Code, called.Error));
        Assert.Contains(headline, called.Output, StringComparison.Ordinal);
        ExpectedFile.Check($"cli/advise-{name}.txt", called.Output);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Fit_is_as_stored(string name)
    {
        var called = Called.With("fit", Checkout.Sample(name + ".csv"), "--quiet");
        Assert.Equal((0, ""), (called.Code, called.Error));
        ExpectedFile.Check($"cli/fit-{name}.txt", called.Output);
    }

    [Fact]
    public void Fit_in_ascii_prints_ascii()
    {
        var called = Called.With("fit", Checkout.Sample("lantern-gel-07.csv"), "--ascii", "--at", "2.5");
        called.IsAscii();
        ExpectedFile.Check("cli/fit-ascii.txt", called.Output);
    }

    [Fact]
    public void Advice_with_history_is_as_stored()
        => ExpectedFile.Check(
            "cli/advise-history.txt",
            Called.With("advise", Checkout.Sample("lantern-gel-07.csv"), "--history", Checkout.Sample("lantern-gel-06.csv")).Output);
}
