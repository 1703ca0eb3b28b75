using Viscolog.Store;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>
/// The journal guards itself where the lock file is gone, and a log that may not be read is not taken for one that is not there.
/// </summary>
public sealed class GuardTests
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void When_the_lock_file_is_removed_the_journal_still_has_one_writer(bool writes)
    {
        var use = writes ? LogUse.Write : LogUse.Read;
        using var bench = Bench.Filled();
        using (var log = bench.Open())
        {
            Assert.IsType<WriteOutcome.Saved>(log.Add(1, Bench.Row(950)));
            File.Delete(bench.Place.Lock);
            Assert.StartsWith($"the log in {bench.Place.Folder} is busy: ", Outcome(bench, use), StringComparison.Ordinal);
            Assert.IsType<WriteOutcome.Saved>(log.Add(1, Bench.Row(951)));
        }

        using var again = bench.Open(LogUse.Read);
        Assert.Empty(again.Notes);
        Assert.Equal(7, again.Run(1)!.Rows.Length);
    }

    [Fact]
    public void A_reader_keeps_writers_away_though_its_lock_file_is_removed()
    {
        using var bench = Bench.Filled();
        using (var log = bench.Open(LogUse.Read))
        {
            File.Delete(bench.Place.Lock);
            Assert.StartsWith($"the log in {bench.Place.Folder} is busy: ", Outcome(bench, LogUse.Write), StringComparison.Ordinal);
            using var other = bench.Open(LogUse.Read);
            Assert.Equal(Snapshot.All(log), Snapshot.All(other));
        }

        bench.Open().Dispose();
    }

    [Fact]
    public void Two_readers_of_whom_each_locked_another_file_do_not_both_make_the_query_copy_anew()
    {
        using var bench = Bench.Filled();
        using var log = bench.Open(LogUse.Read);
        File.Delete(bench.Place.Lock);
        File.Delete(bench.Place.Seal);
        var copy = File.GetLastWriteTimeUtc(bench.Place.Copy);
        using var other = bench.Open(LogUse.Read);
        Assert.Contains("somebody else is reading the log", Assert.Single(other.Notes), StringComparison.Ordinal);
        Assert.Equal(copy, File.GetLastWriteTimeUtc(bench.Place.Copy));
        Assert.False(File.Exists(bench.Place.Seal));
        Assert.Equal(Snapshot.All(log), Snapshot.All(other));
    }

    [Theory]
    [InlineData("appended")]
    [InlineData("cut")]
    [InlineData("changed")]
    [InlineData("replaced")]
    [InlineData("removed")]
    public void A_journal_that_somebody_else_changed_meanwhile_is_not_added_to(string how)
    {
        using var bench = Bench.Filled();
        byte[] changed;
        using (var log = bench.Open())
        {
            Assert.IsType<WriteOutcome.Saved>(log.Add(1, Bench.Row(950)));
            changed = ReadAll(bench.Place.Journal);
            Change(bench, how, ref changed);
            var reason = Assert.IsType<WriteOutcome.NotSaved>(log.Add(1, Bench.Row(951))).Reason;
            Assert.Contains("was changed by another program", reason, StringComparison.Ordinal);
            Assert.IsType<WriteOutcome.NotSaved>(log.Add(1, Bench.Row(952)));
        }

        Assert.Equal(how != "removed", File.Exists(bench.Place.Journal));
        Assert.True(how == "removed" || ReadAll(bench.Place.Journal).AsSpan().SequenceEqual(changed));
    }

    [Fact]
    public void A_restore_waits_for_whoever_writes_though_the_lock_file_is_removed()
    {
        using var bench = Bench.Filled();
        string backup;
        using (var log = bench.Open(LogUse.Read))
        {
            backup = LogBackups.Make(log, bench.Place.Backups, 1, DateTimeOffset.UnixEpoch, null).Made!.Path;
        }

        using var writer = bench.Open();
        File.Delete(bench.Place.Lock);
        Assert.StartsWith(
            $"the log in {bench.Place.Folder} is busy: ",
            LogBackups.Restore(bench.Place, backup, DateTimeOffset.UnixEpoch, null).Reason,
            StringComparison.Ordinal);
        Assert.IsType<WriteOutcome.Saved>(writer.Add(1, Bench.Row(951)));
    }

    [Fact]
    public void An_empty_query_copy_is_made_anew_as_a_missing_one_is()
    {
        using var bench = Bench.Filled();
        File.WriteAllBytes(bench.Place.Copy, []);
        using (var log = bench.Open(LogUse.Read))
        {
            Assert.Empty(log.Notes);
            Assert.Equal(5, log.Run(1)!.Rows.Length);
        }

        Assert.NotEqual(0, new FileInfo(bench.Place.Copy).Length);
    }

    [Theory]
    [InlineData("runs")]
    [InlineData("show", "1")]
    [InlineData("advise", "1")]
    [InlineData("advise", "FILE")]
    [InlineData("fit", "FILE")]
    [InlineData("plot", "FILE", "-o", "OUT")]
    [InlineData("check", "FILE", "--low", "8000", "--high", "9000")]
    [InlineData("export", "1")]
    [InlineData("import", "FILE")]
    [InlineData("backup")]
    [InlineData("verify")]
    [InlineData("drift")]
    public void A_log_that_can_not_be_reached_is_not_a_log_that_is_not_there(params string[] args)
    {
        // A link that leads to itself: nobody gets through it, whoever asks.
        using var folder = new TemporaryFolder();
        File.CreateSymbolicLink(folder.Of("loop"), folder.Of("loop"));
        Ends4(folder, folder.Of("loop/log"), args);
        File.CreateSymbolicLink(folder.Of("log"), folder.Of("log"));
        Ends4(folder, folder.Of("log"), args);
        Directory.CreateDirectory(folder.Of("inside"));
        File.CreateSymbolicLink(folder.Of("inside/readings.journal"), folder.Of("inside/readings.journal"));
        Ends4(folder, folder.Of("inside"), args);
    }

    private static void Ends4(TemporaryFolder folder, string log, string[] args)
    {
        var named = args.Select(a => a switch { "FILE" => Checkout.Sample("lantern-gel-07.csv"), "OUT" => folder.Of("out.svg"), _ => a })
            .ToArray();
        var called = Called.In(log, named);
        Assert.Equal((4, ""), (called.Code, called.Output));
        Assert.DoesNotContain("there is no log", called.Error, StringComparison.Ordinal);
        Assert.Contains($"the log in {log} can't be reached: ", called.Error, StringComparison.Ordinal);
    }

    private static string? Outcome(Bench bench, LogUse use)
    {
        var outcome = bench.Outcome(use);
        outcome.Made?.Dispose();
        return outcome.Reason;
    }

    private static void Change(Bench bench, string how, ref byte[] bytes)
    {
        var journal = bench.Place.Journal;
        switch (how)
        {
            case "appended":
                bytes = [.. bytes, .. "11 {}\n"u8];
                WriteOver(journal, bytes);
                break;
            case "cut":
                bytes = bytes[..^30];
                WriteOver(journal, bytes);
                break;
            case "changed":
                bytes[^3] ^= 1;
                WriteOver(journal, bytes);
                break;
            case "replaced":
                bytes = bytes[..(bytes.AsSpan(0, bytes.Length - 1).LastIndexOf((byte)'\n') + 1)];
                File.WriteAllBytes(journal + ".other", bytes);
                File.Move(journal + ".other", journal, overwrite: true);
                break;
            default:
                File.Delete(journal);
                break;
        }
    }

    private static void WriteOver(string path, byte[] bytes)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
        stream.SetLength(0);
        stream.Write(bytes);
    }

    private static byte[] ReadAll(string path)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
