using Viscolog.Store;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>A disk that fails at any step of a log's life: half a write, a flush, a new name, once or from then on.</summary>
public sealed class FullDiskTests
{
    private const int Backups = 9;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Whichever_step_fails_nothing_acknowledged_is_lost_and_the_log_opens_again(bool stays)
    {
        for (var step = 1; ; step += Sweep.Tries(1, 9))
        {
            using var bench = new Bench();
            bench.Disk.FailsAt = (step, stays);
            var (acknowledged, sent) = (new List<int>(), new HashSet<int>());
            Live(bench, acknowledged, sent);
            var steps = bench.Disk.Steps;
            bench.Disk.FailsAt = null;
            var of = FormattableString.Invariant($"step {step} of {steps}");
            var outcome = bench.Outcome(LogUse.Write);
            Assert.True(outcome.Made is not null, $"{of}: {outcome.Reason}");
            using (var log = outcome.Made!)
            {
                var there = Values(log);
                Assert.True(acknowledged.TrueForAll(there.Contains), $"{of}: lost {string.Join(' ', acknowledged.Except(there))}");
                Assert.True(there.IsSubsetOf(sent), $"{of}: never sent {string.Join(' ', there.Except(sent))}");
                Assert.IsType<WriteOutcome.Saved>(log.Import(Bench.File("at last", 2), CancellationToken.None).Outcome);
            }

            Assert.Null(LogCheck.Of(bench.Open(), null).Difference);
            if (step > steps)
            {
                Assert.True(acknowledged.Count == sent.Count && steps > 60, of);
                return;
            }
        }
    }

    /// <summary>Opens and closes the log, adds to it, backs it up and puts the backup back; goes on after whatever fails.</summary>
    private static void Live(Bench bench, List<int> acknowledged, HashSet<int> sent)
    {
        for (var round = 0; round < 3; round++)
        {
            using (var log = bench.Outcome(LogUse.Write).Made)
            {
                if (log is null)
                {
                    continue;
                }

                Send([.. Enumerable.Range(800 + (100 * round), 3)], () =>
                {
                    var file = Bench.File(FormattableString.Invariant($"pot {round}"), 3);
                    return log.Import(
                        file.With(file.Contents().Select((_, i) => Bench.Row(800 + (100 * round) + i)).ToList()),
                        CancellationToken.None).Outcome;
                });
                if (log.Runs().Count > 0)
                {
                    Send([890 + (100 * round)], () => log.Add(1, Bench.Row(890 + (100 * round))));
                }
            }

            BackUp(bench, round);
        }

        void Send(int[] values, Func<WriteOutcome> send)
        {
            sent.UnionWith(values);
            if (send() is WriteOutcome.Saved or WriteOutcome.SavedOnly)
            {
                acknowledged.AddRange(values);
            }
        }
    }

    private static void BackUp(Bench bench, int round)
    {
        var now = DateTimeOffset.UnixEpoch.AddDays(round);
        BackupMade? made;
        using (var log = bench.Outcome().Made)
        {
            made = log is null ? null : LogBackups.Make(log, bench.Place.Backups, Backups, now, null).Made;
        }

        if (made is not null)
        {
            LogBackups.Restore(bench.Place, made.Path, now, null);
        }
    }

    private static HashSet<int> Values(BenchLog log)
        => [.. log.Runs().SelectMany(r => log.Run(r.Number)!.File.Contents()).Select(r => r.Reading?.Value)
            .OfType<Viscolog.Core.Measuring.InstrumentValue.Direct>().Select(v => (int)v.Viscosity.MilliPascalSeconds)];
}
