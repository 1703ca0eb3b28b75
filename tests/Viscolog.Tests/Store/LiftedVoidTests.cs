using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Tests.RunFiles;

namespace Viscolog.Tests.Store;

/// <summary>Taking back is logged too: a void lifted, a clock set, a run put away. The journal alone gives all of it again.</summary>
public sealed class LiftedVoidTests : IDisposable
{
    private static readonly DateTimeOffset Nine = new(2026, 3, 2, 9, 0, 0, TimeSpan.FromHours(1));

    private readonly Bench _bench = Bench.Filled();

    public void Dispose() => _bench.Dispose();

    [Fact]
    public void A_lifted_void_counts_again_and_the_copy_made_anew_says_the_same()
    {
        using (var log = _bench.Open())
        {
            Saved(log.Void(1, 2, "typed wrong"));
            Saved(log.Edit(1, new RunEdit.Lift(2)));
            Saved(log.Void(1, 3, "wrong pot"));
            Assert.Equal([null, null, "wrong pot", null, null], Voids(log), StringComparer.Ordinal);
            Assert.Equal((5, 1, 4), (log.Runs()[0].Entries, log.Runs()[0].Voided, log.Runs()[0].Readings));
        }

        Assert.Null(LogCheck.Of(_bench.Open(), null).Difference);
        File.Delete(_bench.Place.Copy);
        using var again = _bench.Open();
        Assert.Equal([null, null, "wrong pot", null, null], Voids(again), StringComparer.Ordinal);
        Assert.Equal("typed wrong", Assert.Single(again.Run(1)!.Lifted[2]));
    }

    [Fact]
    public void The_journal_written_again_from_the_copy_keeps_what_was_lifted_the_clock_and_the_archive()
    {
        using (var log = _bench.Open())
        {
            var voided = FileText.Read("# name: w\n# base_g: 120\nviscosity_mpas,void\n900,no\n910,\n");
            Assert.Equal(2, log.Import(voided, CancellationToken.None).Plan!.Run);
            Saved(log.Edit(2, new RunEdit.Lift(1)));
            Saved(log.Edit(2, new RunEdit.Void(1, "yes"), new RunEdit.Lift(1), new RunEdit.Void(1, "after all")));
            Saved(log.SetClock(1, new(Nine, Nine.AddSeconds(10))));
            Saved(log.SetClock(1, StirTimes.None));
            Saved(log.SetClock(1, new(Nine, null)));
            Saved(log.Archive(2, true));
            Saved(log.Archive(1, true));
            Saved(log.Archive(1, false));
        }

        var before = CopyOf();
        var journal = File.ReadAllBytes(_bench.Place.Journal);
        using (var stream = new FileStream(_bench.Place.Journal, FileMode.Open, FileAccess.Write))
        {
            stream.Position = journal.Length / 2;
            stream.WriteByte((byte)(journal[journal.Length / 2] ^ 1));
        }

        Assert.Equal(0, Viscolog.Tests.Support.Called.In(_bench.Place.Folder, "restore", "--from-copy").Code);
        File.Delete(_bench.Place.Copy);
        Assert.Equal(before, CopyOf());
    }

    [Fact]
    public void What_went_in_starts_another_clock_and_what_counts_for_nothing_does_not()
    {
        using var log = _bench.Open();
        var times = new StirTimes(Nine, Nine.AddSeconds(10));
        Saved(log.SetClock(1, times));
        Assert.Equal(times, log.Run(1)!.Clock);
        Saved(log.Add(1, new() { Note = "thick" }));
        Saved(log.Add(1, Bench.Row(950) with { Void = "of another pot" }));
        Assert.Equal(times, log.Run(1)!.Clock);
        Saved(log.Add(1, Bench.Row(960)));
        Assert.Equal(StirTimes.None, log.Run(1)!.Clock);
    }

    [Fact]
    public void A_replacement_taken_back_leaves_the_first_row_and_can_be_said_again()
    {
        using var log = _bench.Open();
        Saved(log.Replace(1, 2, "typed wrong", Bench.Row(1001)));
        Saved(log.Edit(1, new RunEdit.Void(6, "taken back"), new RunEdit.Lift(2)));
        Assert.Equal([null, null, "taken back", null, null, null], Voids(log), StringComparer.Ordinal);
        FileText.Read(FileText.Write(log.Run(1)!.File));
        Saved(log.Edit(1, new RunEdit.Void(2, "typed wrong"), new RunEdit.Lift(6)));
        Assert.Equal([null, "typed wrong", null, null, null, null], Voids(log), StringComparer.Ordinal);
    }

    [Fact]
    public void A_row_that_is_not_void_can_not_be_lifted_and_nothing_of_the_change_is_logged()
    {
        using var log = _bench.Open();
        var before = File.ReadAllBytes(_bench.Place.Journal);
        Assert.Equal("that row is not void", log.Edit(1, new RunEdit.Void(1, "no"), new RunEdit.Lift(2)).Trouble);
        Assert.Equal(before.Length, new FileInfo(_bench.Place.Journal).Length);
    }

    [Fact]
    public void A_file_older_than_the_lifting_makes_nothing_void_again()
    {
        using var log = _bench.Open();
        Saved(log.Void(1, 2, "typed wrong"));
        var older = log.Run(1)!.File;
        Saved(log.Edit(1, new RunEdit.Lift(2)));
        Assert.Equal(0, Bench.Plan(log.Import(older, CancellationToken.None)).RecordCount);
        Saved(log.Void(1, 2, "typed wrong after all"));
        Assert.Equal(0, Bench.Plan(log.Import(older, CancellationToken.None)).RecordCount);
        Assert.Equal("typed wrong after all", Voids(log)[1]);
    }

    private string CopyOf()
    {
        using var log = _bench.Open(LogUse.Read);
        var runs = log.Runs().Select(r => $"{r.Number} {r.IsArchived} {r.Entries} {r.Voided}");
        return string.Join('\n', runs.Concat(log.Runs().Select(r => log.Run(r.Number)!).Select(r =>
            $"{FileText.Write(r.File)} {r.Clock} {string.Join(' ', r.Lifted.Select(l => $"{l.Key}: {string.Join(", ", l.Value)}"))}")));
    }

    private static string?[] Voids(BenchLog log) => [.. log.Run(1)!.File.Contents().Select(r => r.Void)];

    private static void Saved(WriteOutcome outcome) => Assert.True(outcome is WriteOutcome.Saved, outcome.Trouble);
}
