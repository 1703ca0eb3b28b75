using Viscolog.Output;
using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>What is on the disk before what. The files after a cut don't show a flush that was left out, the order does.</summary>
public sealed class DurabilityTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

    private static readonly string[] Put =
    [
        "delete readings.seal", "move readings-new.db to readings.db", "flush folder log",
        .. Whole("readings.seal"),
    ];

    [Fact]
    public void A_row_is_acknowledged_after_it_was_flushed()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        log.Import(Bench.File("glaze 1", 1), CancellationToken.None);
        bench.Disk.Done();
        Assert.IsType<WriteOutcome.Saved>(log.Add(1, Bench.Row(900)));
        Assert.Equal(["write readings.journal", "flush readings.journal"], bench.Disk.Done());
    }

    [Fact]
    public void A_batch_begins_on_the_disk_before_its_lines_and_they_are_there_before_its_end()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        bench.Disk.Done();
        log.Import(Bench.File("glaze 1", 3), CancellationToken.None);
        Assert.Collection(
            bench.Disk.Written,
            begun => Assert.Contains("{\"kind\":\"batch\"", begun, StringComparison.Ordinal),
            lines => Assert.Equal("run row row row", string.Join(' ', lines.TrimEnd().Split('\n').Select(l => l.Split('"')[3]))),
            end => Assert.Contains("{\"kind\":\"end\"}", end, StringComparison.Ordinal));
        string[] step = ["write readings.journal", "flush readings.journal"];
        Assert.Equal([.. step, .. step, .. step], bench.Disk.Done());
    }

    [Fact]
    public void A_new_log_has_a_name_that_lasts_before_anything_is_added()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        Assert.Equal(
            ["flush folder above", .. Whole("readings.journal"), .. Put[1..], "delete readings.seal", "flush folder log"],
            bench.Disk.Done());
    }

    [Theory]
    [InlineData("log")]
    [InlineData("backups")]
    public void A_folder_that_was_there_already_has_a_name_that_lasts_too(string which)
    {
        // Somebody made it, or a start that died right behind making it.
        using var bench = which == "log" ? new Bench() : Bench.Filled();
        Directory.CreateDirectory(which == "log" ? bench.Place.Folder : bench.Place.Backups);
        bench.Disk.Done();
        using var log = bench.Open(which == "log" ? LogUse.Write : LogUse.Read);
        if (which == "log")
        {
            var done = bench.Disk.Done().ToList();
            Assert.InRange(done.IndexOf("flush folder above"), 0, done.FindIndex(d => d.StartsWith("move", StringComparison.Ordinal)));
            return;
        }

        Assert.NotNull(LogBackups.Make(log, bench.Place.Backups, 1, Now, null).Made);
        Assert.Equal("flush folder log", bench.Disk.Done()[0]);
    }

    [Theory]
    [InlineData("flush folder above")]
    [InlineData("flush folder log")]
    public void A_new_log_whose_name_does_not_last_acknowledges_nothing(string step)
    {
        using var bench = new Bench();
        bench.Disk.Fails = step;
        var outcome = bench.Outcome(LogUse.Write);
        outcome.Made?.Dispose();
        Assert.Contains("the disk gave up", outcome.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_log_is_sealed_when_it_is_closed_and_unsealed_before_it_changes()
    {
        using var bench = Bench.Filled();
        var log = bench.Open();
        bench.Disk.Done();
        log.Dispose();
        Assert.Equal(Whole("readings.seal"), bench.Disk.Done());
        log = bench.Open();
        Assert.Equal(["delete readings.seal", "flush folder log"], bench.Disk.Done());
        log.Dispose();
    }

    [Fact]
    public void A_query_copy_takes_its_place_while_no_seal_speaks_for_the_old_one()
    {
        using var bench = Bench.Filled();
        File.Delete(bench.Place.Copy);
        bench.Disk.Done();
        bench.Open(LogUse.Read).Dispose();
        Assert.Equal(Put, bench.Disk.Done());
    }

    [Fact]
    public void A_torn_end_is_kept_on_the_disk_before_it_is_cut_off()
    {
        using var bench = Bench.Filled();
        File.AppendAllText(bench.Place.Journal, "8 {\"kind\":\"row");
        bench.Disk.Done();
        bench.Open().Dispose();
        Assert.Equal(
            ["write readings.torn", "flush readings.torn", "flush folder log", "cut readings.journal", "flush readings.journal"],
            bench.Disk.Done()[..5]);
    }

    [Fact]
    public void A_backup_is_whole_and_named_before_an_older_one_goes()
    {
        using var bench = Bench.Filled();
        using var log = bench.Open();
        Assert.NotNull(LogBackups.Make(log, bench.Place.Backups, 1, Now, null).Made);
        var id = JournalFile.IdOf(bench.Place.Journal)!.Value.ToString("N")[^8..];
        bench.Disk.Done();
        Assert.NotNull(LogBackups.Make(log, bench.Place.Backups, 1, Now.AddDays(1), null).Made);
        Assert.Equal(
            [
                "flush folder log",
                "write a passing file",
                "flush a passing file",
                $"move a passing file to backup-20260303T090000Z-{id}.journal",
                "flush folder backups", $"delete backup-20260302T090000Z-{id}.journal",
            ],
            bench.Disk.Done());
    }

    [Fact]
    public void A_restored_journal_comes_in_whole_after_the_present_one_was_set_aside()
    {
        using var bench = Bench.Filled();
        string backup;
        using (var log = bench.Open())
        {
            backup = LogBackups.Make(log, bench.Place.Backups, 1, Now, null).Made!.Path;
        }

        bench.Disk.Done();
        Assert.NotNull(LogBackups.Restore(bench.Place, backup, Now, null).Made);
        // The mark is moved once, later there is none.
        const string mark = "move readings.mark to readings.mark";
        var first = bench.Disk.Done();
        Assert.Contains(mark, first, StringComparer.Ordinal);
        Assert.Equal(
            ["write readings.journal.new", "flush readings.journal.new", .. PutBack], first.Where(l => l != mark), StringComparer.Ordinal);
        Assert.NotNull(LogBackups.RestoreFromCopy(bench.Place, Now.AddDays(1), null).Made);
        var done = bench.Disk.Done();
        Assert.Equal(Whole("readings.journal.new"), done[..4]);
        Assert.Equal("flush readings.journal.new", done[^(PutBack.Length + 1)]);
        var lines = PutBack.Select(l => l.Replace("20260302", "20260303", StringComparison.Ordinal));
        Assert.Equal(lines, done[^PutBack.Length..], StringComparer.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_whole_file_is_on_the_disk_before_it_has_its_name(bool replace)
    {
        using var folder = new TemporaryFolder();
        var disk = new WatchedDisk();
        Assert.True(WholeFile.Write(disk, folder.Of("out.csv"), "a,b\n"u8, replace));
        Assert.Equal([.. Whole("out.csv")[..3], "flush folder above"], disk.Done());
        Assert.Equal("a,b\n", File.ReadAllText(folder.Of("out.csv")));
    }

    [Theory]
    [InlineData("write readings.journal")]
    [InlineData("flush readings.journal")]
    public void What_did_not_reach_the_disk_is_cut_off_again_and_not_in_the_log(string step)
    {
        using var bench = Bench.Filled();
        var before = File.ReadAllBytes(bench.Place.Journal);
        using (var log = bench.Open())
        {
            bench.Disk.Fails = step;
            var reason = Assert.IsType<WriteOutcome.NotSaved>(log.Add(1, Bench.Row(950))).Reason;
            var state = step[0] == 'w' ? "it is not in the log" : "the next start may find it or not";
            Assert.Contains($"{state}: the disk gave up", reason, StringComparison.Ordinal);
            bench.Disk.Fails = null;
            // Where the cut could not be flushed either, nobody knows the journal's end until the log is opened again.
            Assert.Equal(step[0] == 'w', log.Add(1, Bench.Row(951)) is WriteOutcome.Saved);
        }

        using var again = bench.Open(LogUse.Read);
        Assert.Equal(step[0] == 'w' ? 6 : 5, again.Run(1)!.File.Rows.Length);
        Assert.True(File.ReadAllBytes(bench.Place.Journal).AsSpan().StartsWith(before));
    }

    [Fact]
    public void A_file_that_can_not_be_flushed_is_a_fault()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "only there stands a file that can't be flushed");
        using var folder = new TemporaryFolder();
        using var kept = new FileStream(folder.Of("a"), FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0);
        Disk.Real.Flush(kept);
        // The name of this process, which the system shows as a file and keeps nowhere.
        using var shown = new FileStream("/proc/self/comm", FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
        var fault = Assert.Throws<IOException>(() => Disk.Real.Flush(shown));
        Assert.StartsWith("the disk did not accept it: ", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_is_flushed_where_the_system_can()
    {
        using var folder = new TemporaryFolder();
        Assert.True(Disk.Real.FlushFolder(folder.FullPath));
        // A folder that is only shown, not kept, can't be.
        Assert.False(OperatingSystem.IsLinux() && Disk.Real.FlushFolder("/proc"));
    }

    [Fact]
    public void Each_folder_that_is_made_is_flushed_in_the_one_above_it()
    {
        using var folder = new TemporaryFolder();
        var disk = new WatchedDisk();
        disk.MakeFolder(folder.Of("a/b"));
        Assert.True(Directory.Exists(folder.Of("a/b")));
        Assert.Equal(["flush folder above", "flush folder a"], disk.Done());
        disk.MakeFolder(folder.Of("a/b"));
        Assert.Empty(disk.Done());
    }

    [Fact]
    public void The_store_moves_and_flushes_its_files_through_the_disk_alone()
    {
        var sources = Directory.GetFiles(Path.Combine(Checkout.Root, "src/Viscolog/Store"), "*.cs", SearchOption.AllDirectories);
        Assert.Contains(sources, s => Path.GetFileName(s) == "JournalWriter.cs");
        // The lock's files are worth nothing after a power cut.
        Assert.All(sources.Where(s => Path.GetFileName(s) != "LogLock.cs"), path =>
        {
            var text = File.ReadAllText(path);
            Assert.All(
                [" File.Move(", " File.Delete(", " File.WriteAll", " File.Copy(", "Directory.Move", "Directory.Cr", "flushTo", ".SetLen"],
                deed => Assert.DoesNotContain(deed, text, StringComparison.Ordinal));
        });
    }

    private static string[] PutBack =>
    [
        "flush folder log", "write readings.journal", "flush readings.journal",
        "move readings.seal to readings.seal", "move readings.db to readings.db", "flush folder aside-20260302T090000Z",
        "move readings.journal.new to readings.journal", "flush folder log",
        .. Put[1..],
    ];

    private static string[] Whole(string name)
        => ["write a passing file", "flush a passing file", $"move a passing file to {name}", "flush folder log"];
}
