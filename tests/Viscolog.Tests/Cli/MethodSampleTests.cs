using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>A sample run by each method, through every command that reads one.</summary>
public sealed class MethodSampleTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("viscolog-").FullName;

    public static TheoryData<string> Names => [.. Directory.GetFiles(Checkout.Sample("methods"), "*.csv").Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal)];

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [MemberData(nameof(Names))]
    public void Advice_is_as_stored(string name)
    {
        var called = Called.With("advise", Sample(name));
        Assert.Equal((0, ""), (called.Code, called.Error));
        Assert.Contains("ADD", called.Output, StringComparison.Ordinal);
        ExpectedFile.Check($"cli/advise-{name}.txt", called.Output);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Fit_and_plot_work(string name)
    {
        Assert.Equal(0, Called.With("fit", Sample(name)).Code);
        Assert.Equal(0, Called.With("plot", Sample(name), "-o", Path.Combine(folder, name + ".svg")).Code);
    }

    private static string Sample(string name) => Checkout.Sample(Path.Combine("methods", name + ".csv"));
}
