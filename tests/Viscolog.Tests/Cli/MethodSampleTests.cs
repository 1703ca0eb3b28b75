using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>A sample run by each method, through every command that reads one.</summary>
public sealed class MethodSampleTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("viscolog-").FullName;

    public static TheoryData<string> Names
        =>
        [
            .. Directory.GetFiles(Checkout.Sample("methods"), "*.csv").Select(f => Path.GetFileNameWithoutExtension(f)!)
                .Order(StringComparer.Ordinal),
        ];

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [MemberData(nameof(Names))]
    public void Advice_is_as_stored(string name)
    {
        var called = Called.With("advise", Sample(name));
        Assert.Equal((0, ""), (called.Code, called.Error));
        Assert.Matches("\n  (ADD|READ|WAIT) ", called.Output);
        ExpectedFile.Check($"cli/advise-{name}.txt", called.Output);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Fit_and_plot_work(string name)
    {
        var method = File.ReadLines(Sample(name)).First(l => l.StartsWith("# method: ", StringComparison.Ordinal))["# method: ".Length..];
        var fit = Called.With("fit", Sample(name));
        Assert.Equal(0, fit.Code);
        Assert.Contains($"mPa·s at 23.0 °C by {method}", fit.Output, StringComparison.Ordinal);
        Assert.Equal(0, Called.With("plot", Sample(name), "-o", Path.Combine(_folder, name + ".svg")).Code);
        Assert.Contains(method, File.ReadAllText(Path.Combine(_folder, name + ".svg")), StringComparison.Ordinal);
    }

    [Fact]
    public void Curves_by_different_methods_in_one_picture_are_warned_of()
    {
        var called = Called.With(
            "plot",
            Sample("wall-gel-rotational"),
            Checkout.Sample("lantern-gel-07.csv"),
            "-o",
            Path.Combine(_folder, "both.svg"));
        Assert.Equal(0, called.Code);
        Assert.Contains("can't be compared", called.Error, StringComparison.Ordinal);
    }

    private static string Sample(string name) => Checkout.Sample(Path.Combine("methods", name + ".csv"));
}
