using System.Globalization;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Tests.RunFiles;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>What the query copy can't take never gets into the journal; a journal that holds it already opens without it.</summary>
public sealed class MisfitTests
{
    [Fact]
    public void Files_that_differ_in_an_unknown_column_alone_are_runs_of_their_own()
    {
        using var bench = new Bench();
        using (var log = bench.Open())
        {
            foreach (var brix in (string[])["3", "4", "5"])
            {
                Assert.True(Bench.Plan(log.Import(Brix(brix), CancellationToken.None)).IsNew);
            }
        }

        using var again = bench.Open();
        Assert.Empty(again.Notes);
        Assert.Equal(3, again.Runs().Select(r => r.Id).Distinct().Count());
        Assert.Equal(["3", "4", "5"], again.Runs().Select(r => again.Run(r.Number)!.File.Rows[0].Unknown.Single()), StringComparer.Ordinal);
        Assert.Equal(0, Bench.Plan(again.Import(Brix("4"), CancellationToken.None)).RecordCount);
    }

    [Fact]
    public void A_header_that_is_stated_again_and_again_never_grows_beyond_what_can_be_looked_up()
    {
        using var bench = Bench.Filled();
        var refused = 0;
        using (var log = bench.Open())
        {
            for (var i = 0; i < 20; i++)
            {
                var note = string.Create(CultureInfo.InvariantCulture, $"{i} {new string('x', 900_000)}");
                switch (log.Restate(1, log.Run(1)!.File with { Run = log.Run(1)!.File.Run with { Note = note } }))
                {
                    case WriteOutcome.NotSaved no:
                        Assert.Contains("the headers of run 1 would take ", no.Reason, StringComparison.Ordinal);
                        refused++;
                        break;
                    case var outcome:
                        Assert.IsType<WriteOutcome.Saved>(outcome);
                        break;
                }
            }

            Assert.InRange(refused, 1, 5);
            Assert.IsType<WriteOutcome.Saved>(log.Add(1, Bench.Row(950)));
        }

        File.Delete(bench.Place.Seal);
        using var again = bench.Open(LogUse.Read);
        Assert.Equal(6, again.Run(1)!.File.Rows.Length);
    }

    [Theory]
    [InlineData("twin")]
    [InlineData("huge")]
    [InlineData("gap")]
    [InlineData("late")]
    public void A_journal_that_holds_what_can_not_be_applied_opens_without_it_and_names_its_line(string what)
    {
        using var bench = Bench.Filled();
        Guid id;
        using (var log = bench.Open())
        {
            id = log.Runs()[0].Id;
        }

        var (bad, line) = Bad(what, id);
        Append(bench.Place, [.. bad, [new LogRecord.RowAdded(1, 6, Bench.Row(960))]]);
        var journal = File.ReadAllBytes(bench.Place.Journal);
        string all;
        using (var log = bench.Open())
        {
            var note = Assert.Single(log.Notes, n => n.Contains("is left out", StringComparison.Ordinal));
            Assert.StartsWith(FormattableString.Invariant($"{bench.Place.Journal}, line {line}: "), note, StringComparison.Ordinal);
            Assert.Equal(6, log.Run(1)!.File.Rows.Length);
            Assert.Single(log.Runs());
            Assert.True(Bench.Plan(log.Import(Bench.File("glaze 2", 2), CancellationToken.None)).IsNew);
            all = Snapshot.All(log);
        }

        Assert.True(File.ReadAllBytes(bench.Place.Journal).AsSpan().StartsWith(journal));
        File.Delete(bench.Place.Seal);
        using (var again = bench.Open(LogUse.Read))
        {
            Assert.Equal(all, Snapshot.All(again));
        }

        var verified = Called.In(bench.Place.Folder, "verify");
        Assert.Equal(0, verified.Code);
        Assert.Contains(FormattableString.Invariant($"line {line}: "), verified.Error, StringComparison.Ordinal);
        Assert.Equal(2, LogCheck.Of(bench.Open(), null).Runs);
    }

    [Fact]
    public void A_record_that_can_not_be_understood_is_named_and_nothing_is_changed()
    {
        foreach (var header in (string[][])[["base_g: 100", "method: reading tea leaves"], ["name: no base"], ["base_g: -4"]])
        {
            using var bench = Bench.Filled();
            Append(bench.Place, [new LogRecord.RunStated(2, Guid.NewGuid(), header)]);
            var journal = File.ReadAllBytes(bench.Place.Journal);
            Assert.Contains("can't be understood: line 10 ", bench.Refusal(), StringComparison.Ordinal);
            Assert.Equal(4, Called.In(bench.Place.Folder, "runs").Code);
            Assert.True(Snapshot.IsUntouched(bench.Place.Journal, journal));
        }
    }

    /// <summary>
    /// Records as an earlier version may have written them, and the line that can't be applied. The log has nine lines before.
    /// </summary>
    private static (LogRecord[][] Batches, int Line) Bad(string what, Guid known)
    {
        string[] header = ["name: glaze 1", "base_g: 120", "thickener: TA"];
        var twin = new LogRecord.RunStated(2, known, header);
        return what switch
        {
            "twin" => ([[twin, new LogRecord.RowAdded(2, 1, Bench.Row(1)), new LogRecord.RowAdded(2, 2, Bench.Row(2))]], 11),
            // Eighteen fit, as they did before.
            "huge" => ([.. Enumerable.Range(0, 19).Select(Huge)], 28),
            "gap" => ([[new LogRecord.RowAdded(1, 8, Bench.Row(1))]], 10),
            _ => ([[new LogRecord.RunStated(2, Guid.NewGuid(), header), new LogRecord.RowAdded(2, 2, Bench.Row(2))]], 12),
        };

        LogRecord[] Huge(int number)
            => [new LogRecord.RunStated(1, known, [.. header, FormattableString.Invariant($"note: {number} {new string('x', 900_000)}")])];
    }

    private static void Append(LogPlace place, params LogRecord[][] batches)
    {
        using var journal = new JournalWriter(place.Disk, place.Journal, JournalFile.Scan(place.Journal, 0, null));
        foreach (var batch in batches)
        {
            journal.Append(batch, batch.Length, "2026-03-02T09:00:00.000Z", CancellationToken.None);
        }
    }

    private static RunFile Brix(string brix)
        => FileText.Read($"# name: syrup\n# base: Gable\n# base_g: 120\nviscosity_mpas,brix\n850,{brix}\n");
}
