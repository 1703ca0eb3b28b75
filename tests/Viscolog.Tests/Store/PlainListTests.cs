using CsCheck;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Tests.RunFiles;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>Whatever is done to two logs, and whatever they take over from one another, they say what plain lists say.</summary>
public sealed class PlainListTests
{
    [Fact]
    public void Two_logs_are_two_plain_lists()
        => Gen.Select(Gen.Int[0, 9], Gen.Int[0, 1], Gen.Int[0, 2], Gen.Int[0, 999]).Array[5, 40].Sample(
            deeds =>
            {
                using var left = new Listed();
                using var right = new Listed();
                var next = 1;
                foreach (var (deed, side, run, more) in deeds)
                {
                    var (one, other) = side == 0 ? (left, right) : (right, left);
                    one.Do(deed, run, more, other, ref next);
                    one.Same();
                    other.Same();
                }

                left.End();
                right.End();
            },
            iter: Sweep.Tries(300, 12),
            threads: 1);

    /// <summary>A log, and what it ought to say: by the name of each run its rows, each a value and why it is void.</summary>
    private sealed class Listed : IDisposable
    {
        private readonly Bench _bench = new();
        private readonly Dictionary<int, List<(int Value, string? Void)>> _runs = [];
        private BenchLog _log;

        public Listed() => _log = _bench.Open();

        public void Do(int deed, int run, int more, Listed other, ref int next)
        {
            var known = _runs.GetValueOrDefault(run);
            switch (deed)
            {
                case 0 or 1 when known is null && other._runs.GetValueOrDefault(run) is null:
                    var rows = Values(deed == 0 ? 1 + (more % 4) : 240 + (more % 40), ref next);
                    Assert.IsType<WriteOutcome.Saved>(_log.Import(File(run, rows), CancellationToken.None).Outcome);
                    _runs[run] = rows;
                    break;
                case 2 or 3 when known is not null:
                    known.Add((next++, null));
                    Assert.IsType<WriteOutcome.Saved>(_log.Add(Number(run), Row(known[^1])));
                    break;
                case 4 or 5 when known is not null && known[more % known.Count].Void is null:
                    Void(run, known, more % known.Count, deed == 5 ? next++ : null);
                    break;
                case 6 or 7 when known is not null:
                    other.TakeOver(run, known, _log.Run(Number(run))!.File);
                    break;
                case 8:
                    Reopen(more);
                    break;
                case 9:
                    Restore(more);
                    break;
                default:
                    break;
            }
        }

        public void Same()
        {
            foreach (var (run, rows) in _runs)
            {
                Assert.Equal(rows, Said(_log.Run(Number(run))!.File));
            }

            Assert.Equal(_runs.Count, _log.Runs().Count);
            Assert.Equal(_runs.Values.Sum(r => r.Count), _log.Runs().Sum(r => r.Entries));
        }

        public void End()
        {
            _log.Dispose();
            Assert.Null(LogCheck.Of(_bench.Open(), null).Difference);
            _log = _bench.Open();
            Same();
        }

        public void Dispose()
        {
            _log.Dispose();
            _bench.Dispose();
        }

        private void TakeOver(int run, List<(int Value, string? Void)> theirs, RunFile file)
        {
            var mine = _runs.GetValueOrDefault(run);
            var outcome = _log.Import(file, CancellationToken.None).Outcome;
            if (outcome is WriteOutcome.Contradicted)
            {
                // Only where both went on, each in its own way.
                Assert.NotNull(mine);
                Assert.NotEmpty(mine.Except(theirs));
                Assert.NotEmpty(theirs.Except(mine));
                return;
            }

            Assert.IsType<WriteOutcome.Saved>(outcome);
            var both = Said(_log.Run(Number(run))!.File);
            if (mine is null || mine.TrueForAll(m => theirs.Contains(m) || theirs.Contains((m.Value, "no"))))
            {
                // Nothing here that they lack: theirs it is.
                Assert.Equal(theirs, both);
            }

            // Every row of either side once, in either's order, void where one of them says so.
            var voids = theirs.Concat(mine ?? []).Where(r => r.Void is not null).Select(r => r.Value).ToHashSet();
            Assert.Equal(theirs.Concat(mine ?? []).Select(r => r.Value).Distinct().Order(), both.Select(r => r.Value).Order());
            Assert.All(both, r => Assert.Equal(voids.Contains(r.Value), r.Void is not null));
            Assert.Equal(theirs.Select(r => r.Value), both.Select(r => r.Value).Where(v => theirs.Exists(t => t.Value == v)));
            _runs[run] = both;
        }

        private void Void(int run, List<(int Value, string? Void)> rows, int place, int? by)
        {
            var number = _log.Run(Number(run))!.Rows[place];
            rows[place] = rows[place] with { Void = "no" };
            if (by is { } value)
            {
                rows.Insert(place + 1, (value, null));
                Assert.IsType<WriteOutcome.Saved>(_log.Replace(Number(run), number, "no", Row((value, null))));
            }
            else
            {
                Assert.IsType<WriteOutcome.Saved>(_log.Void(Number(run), number, "no"));
            }
        }

        private void Reopen(int more)
        {
            _log.Dispose();
            foreach (
                var (path, bit) in new[] { (_bench.Place.Copy, 1), (_bench.Place.Seal, 2), (_bench.Place.Mark, 4), (_bench.Place.Lock, 8) })
            {
                if ((more & bit) != 0)
                {
                    System.IO.File.Delete(path);
                }
            }

            _log = _bench.Open();
        }

        private void Restore(int more)
        {
            var now = DateTimeOffset.UnixEpoch.AddSeconds(more);
            var path = LogBackups.Make(_log, _bench.Place.Backups, 1 + (more % 3), now, null).Made!.Path;
            _log.Dispose();
            Assert.NotNull(
                more % 2 == 0
                    ? LogBackups.Restore(_bench.Place, path, now, null).Made
                    : LogBackups.RestoreFromCopy(_bench.Place, now, null).Made);
            _log = _bench.Open();
        }

        private int Number(int run) => _log.Runs().Single(r => r.Header.Name == Name(run)).Number;

        private static string Name(int run) => FormattableString.Invariant($"pot {run}");

        private static List<(int Value, string? Void)> Values(int count, ref int next)
        {
            var first = next;
            next += count;
            return [.. Enumerable.Range(first, count).Select(v => (v, (string?)null))];
        }

        private static RunFile File(int run, List<(int Value, string? Void)> rows)
            => FileText.Read(
                $"# name: {Name(run)}\n# base_g: 120\nviscosity_mpas\n" + string.Concat(
                    rows.Select(r => FormattableString.Invariant($"{r.Value}\n"))));

        private static FileRow Row((int Value, string? Void) row)
            => FileText.Read(FormattableString.Invariant($"# base_g: 120\nviscosity_mpas\n{row.Value}\n")).Contents().Single();

        private static List<(int Value, string? Void)> Said(RunFile file)
            =>
            [
                .. file.Contents().Select(
                    r => ((int)((Viscolog.Core.Measuring.InstrumentValue.Direct)r.Reading!.Value!).Viscosity.MilliPascalSeconds, r.Void)),
            ];
    }
}
