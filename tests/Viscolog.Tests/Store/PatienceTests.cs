using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>An import waits for whoever has the log.</summary>
public sealed class PatienceTests
{
    [Fact]
    public void An_import_waits_and_says_for_whom_and_goes_on_when_the_other_has_closed_it()
    {
        using var bench = Bench.Filled();
        var other = bench.Open();
        var said = new List<string>();
        var waiting = new Listener(what =>
        {
            if (what.StartsWith("waiting for ", StringComparison.Ordinal))
            {
                said.Add(what);
                other.Dispose();
            }
        });
        using var log = BenchLog.Open(
            bench.Place,
            LogUse.Write,
            TimeProvider.System,
            waiting,
            new(TimeSpan.FromHours(1), CancellationToken.None)).Made!;
        Assert.Contains(
            FormattableString.Invariant($"process {Environment.ProcessId} of {Environment.UserName} on "),
            said[0],
            StringComparison.Ordinal);
        Assert.IsType<WriteOutcome.Saved>(log.Add(1, Bench.Row(950)));
    }

    [Fact]
    public void Who_waits_can_be_stopped()
    {
        using var bench = Bench.Filled();
        using var other = bench.Open();
        using var stop = new CancellationTokenSource();
        var waiting = new Listener(_ => stop.Cancel());
        var outcome = BenchLog.Open(bench.Place, LogUse.Write, TimeProvider.System, waiting, new(TimeSpan.FromHours(1), stop.Token));
        Assert.Contains("is busy: ", outcome.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void An_import_waits_longer_than_a_command_that_a_person_waits_for()
    {
        using var bench = Bench.Filled();
        var other = bench.Open();
        Called? called = null;
        var import = new Thread(() => called = Called.In(bench.Place.Folder, "import", Checkout.Sample("lantern-gel-07.csv")));
        import.Start();
        // A little more than the two seconds of the others.
        Assert.False(import.Join(TimeSpan.FromSeconds(4)));
        other.Dispose();
        import.Join();
        Assert.Equal(0, called!.Code);
        Assert.Contains("waiting for process ", called.Error, StringComparison.Ordinal);
    }

    private sealed class Listener(Action<string> hear) : IProgress<LogProgress>
    {
        public void Report(LogProgress value) => hear(value.Doing);
    }
}
