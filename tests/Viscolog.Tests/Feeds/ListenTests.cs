using System.Text.Json;
using Viscolog.Tests.Store;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Feeds;

/// <summary>The command <c>listen</c>: lines of JSON, and what it logs.</summary>
public sealed class ListenTests
{
    [Fact]
    public void A_file_that_another_program_writes_is_logged_to_a_run_and_what_is_absurd_is_not()
    {
        using var bench = new Bench();
        using (var log = bench.Open())
        {
            log.Import(RunFiles.FileText.Read(File.ReadAllText(Checkout.Sample("lantern-gel-07.csv"))), CancellationToken.None);
        }

        var before = Rows(bench);
        var source = Path.GetTempFileName();
        Called answer = null!;
        var called = new Thread(() => answer = Called.With(
            "listen",
            "file:" + source,
            "--reads",
            "viscosity_mpas=1; temp_c=2; stable=3:S",
            "--log-to",
            "1",
            "--every",
            "0.1",
            "--count",
            "4",
            "--log",
            bench.Place.Folder));
        called.Start();
        Thread.Sleep(1500);
        foreach (var line in (string[])["4510 23.0 M", "4480 23.0 S", "900000000 23.0 M", "garbage", "900000000 23.0 S"])
        {
            File.AppendAllText(source, line + "\n");
            Thread.Sleep(400);
        }

        Assert.True(called.Join(TimeSpan.FromSeconds(60)));
        File.Delete(source);
        Assert.Equal(0, answer.Code);
        var lines = answer.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonDocument.Parse(l).RootElement)
            .ToList();
        var logged = lines.Where(l => l.TryGetProperty("logged", out _)).Select(l => l.GetProperty("logged").GetString()!).ToList();
        Assert.Equal(["passed over", $"row {before + 1}", "passed over"], logged.Take(3), StringComparer.Ordinal);
        Assert.StartsWith("not logged: ", logged[3], StringComparison.Ordinal);
        Assert.Single(lines, l => l.TryGetProperty("misread", out _));
        Assert.Equal(before + 1, Rows(bench));
    }

    [Theory]
    [InlineData("the log knows no instrument 'scale'", "listen", "scale")]
    [InlineData("expected a serial port", "listen", "nowhere", "--reads", "viscosity_mpas=1")]
    [InlineData("expected viscosity_mpas?", "listen", "tcp:localhost:9", "--reads", "viscosty_mpas=1")]
    public void What_can_not_be_listened_to_is_refused(string said, params string[] args)
    {
        using var bench = new Bench();
        bench.Open().Dispose();
        var called = Called.With([.. args, "--log", bench.Place.Folder]);
        Assert.Equal((2, ""), (called.Code, called.Output));
        Assert.Contains(said, called.Error, StringComparison.Ordinal);
    }

    private static int Rows(Bench bench)
    {
        using var log = bench.Open();
        return log.Run(1)!.Rows.Length;
    }
}
