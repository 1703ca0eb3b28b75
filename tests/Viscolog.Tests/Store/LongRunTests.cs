using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Tests.RunFiles;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>Runs of thousands of rows, which the query copy holds in blocks.</summary>
public sealed class LongRunTests
{
    private const int Long = 2500;

    [Fact]
    public void A_long_run_is_what_its_rows_are_whatever_is_done_to_them()
    {
        using var bench = new Bench();
        var rows = LongFile().Contents().ToList();
        var numbers = Enumerable.Range(1, Long).ToList();
        using (var log = bench.Open())
        {
            Assert.Equal(Long, Bench.Plan(log.Import(LongFile(), CancellationToken.None)).Added);
            Same(log);
            foreach (var row in (int[])[1, 250, 251, 1700, 2001, 2500])
            {
                Do(log, row);
                Same(log);
            }

            // What was put in place of a row is replaced itself, and so is what stands behind that.
            Do(log, 2501);
            Do(log, 2503);
            Same(log);
            Assert.IsType<WriteOutcome.Saved>(log.Add(1, Last()));
            rows.Add(Last());
            numbers.Add(numbers.Max() + 1);
            Same(log);
        }

        Assert.Null(LogCheck.Of(bench.Open(), null).Difference);
        File.Delete(bench.Place.Seal);
        using (var again = bench.Open())
        {
            Same(again);
            Assert.Equal(0, Bench.Plan(again.Import(again.Run(1)!.File, CancellationToken.None)).RecordCount);
        }

        Assert.Null(LogCheck.Of(bench.Open(), null).Difference);
        Assert.NotNull(LogBackups.RestoreFromCopy(bench.Place, DateTimeOffset.UnixEpoch, null).Made);
        using var restored = bench.Open();
        Same(restored);

        void Do(BenchLog log, int number)
        {
            var place = numbers.IndexOf(number);
            var by = rows[place] with { Note = FormattableString.Invariant($"for {number}"), Void = null, Replaces = true };
            Assert.IsType<WriteOutcome.Saved>(log.Replace(1, number, "typed wrong", by));
            rows[place] = rows[place] with { Void = "typed wrong" };
            rows.Insert(place + 1, by);
            numbers.Insert(place + 1, numbers.Max() + 1);
        }

        void Same(BenchLog log)
        {
            var run = log.Run(1)!;
            Assert.Equal(numbers, run.Rows);
            Assert.Equal(FileText.Write(LongFile().With(rows) with { Id = run.File.Id }), FileText.Write(run.File));
            var summary = log.Runs()[0];
            Assert.Equal((rows.Count, rows.Count(r => r.Void is not null)), (summary.Entries, summary.Voided));
        }
    }

    [Fact]
    public void A_copy_of_the_version_before_is_read_and_written_on_as_it_is()
    {
        var kept = Path.Combine(Checkout.Root, "tests", "Viscolog.Tests", "Data", "stored-log");
        using var bench = new Bench();
        Directory.CreateDirectory(bench.Place.Folder);
        foreach (var file in (string[])["readings.journal", "readings.db", "readings.seal"])
        {
            File.Copy(Path.Combine(kept, file), Path.Combine(bench.Place.Folder, file));
        }

        using (var log = bench.Open())
        {
            Assert.Empty(log.Notes);
            Assert.Equal(Long, Bench.Plan(log.Import(LongFile(), CancellationToken.None)).Added);
        }

        using (var again = bench.Open(LogUse.Read))
        {
            Assert.Empty(again.Notes);
            Assert.Equal(Long, again.Runs()[^1].Entries);
        }

        Assert.Null(LogCheck.Of(bench.Open(), null).Difference);
    }

    private static FileRow Last() => Bench.File("last", 1).Contents().Single() with { Note = "the last" };

    private static RunFile LongFile() => Bench.File("long", Long);
}
