using Viscolog.Store;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>Which backups are kept: one's own, the latest by what is in them.</summary>
public sealed class BackupTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

    [Fact]
    public void The_one_just_made_and_those_with_the_most_in_them_are_kept_whatever_their_times()
    {
        using var bench = Bench.Filled();
        var paths = new List<string>();
        for (var i = 0; i < 4; i++)
        {
            using (var log = bench.Open())
            {
                Assert.IsType<WriteOutcome.Saved>(log.Add(1, Bench.Row(950 + i)));
            }

            // Each is made by a clock that was set back, and its file looks younger than all later ones.
            paths.Add(Made(bench, 3, Now.AddDays(-i)).Path);
            File.SetLastWriteTimeUtc(paths[^1], Now.UtcDateTime.AddYears(10 - i));
        }

        Assert.False(File.Exists(paths[0]));
        Assert.All(paths[1..], p => Assert.True(File.Exists(p), p));
        Assert.Equal(paths[3], Made(bench, 1, Now.AddDays(-9)).Path.Replace("20260221", "20260227", StringComparison.Ordinal));
        Assert.Single(Directory.GetFiles(bench.Place.Backups));
    }

    [Fact]
    public void Two_logs_that_back_up_into_one_folder_leave_each_other_alone()
    {
        using var folder = new TemporaryFolder();
        using var left = Bench.Filled();
        using var right = Bench.Filled();
        string[] paths = [Made(left, 1, Now, folder.FullPath).Path, Made(right, 1, Now, folder.FullPath).Path];
        Assert.All(paths, p => Assert.True(File.Exists(p), p));
        Assert.Equal(1, Made(left, 1, Now.AddDays(1), folder.FullPath).Deleted);
        Assert.True(File.Exists(paths[1]));
        Assert.Equal(2, Directory.GetFiles(folder.FullPath).Length);
    }

    [Fact]
    public void What_only_looks_like_a_backup_and_one_that_is_damaged_are_neither_counted_nor_deleted()
    {
        using var bench = Bench.Filled();
        var damaged = Made(bench, 9, Now.AddDays(-2)).Path;
        var bytes = File.ReadAllBytes(damaged);
        bytes[^40] ^= 1;
        File.WriteAllBytes(damaged, bytes);
        var foreign = Path.Combine(bench.Place.Backups, "backup-19990101T000000Z.journal");
        File.WriteAllText(foreign, "a list of tapes\n");
        var own = Made(bench, 9, Now.AddDays(-1)).Path;
        Assert.Equal(1, Made(bench, 1, Now).Deleted);
        Assert.Equal([true, true, false], new[] { damaged, foreign, own }.Select(File.Exists));
    }

    /// <summary>As on Windows, where a program that reads the journal keeps it from being replaced.</summary>
    [Fact]
    public void A_journal_that_can_not_be_put_in_place_leaves_the_log_as_it_was()
    {
        using var bench = Bench.Filled();
        var backup = Made(bench, 3, Now).Path;
        string[] files = [bench.Place.Journal, bench.Place.Copy, bench.Place.Seal];
        byte[][] before = [.. files.Select(File.ReadAllBytes)];
        bench.Disk.Fails = "move readings.journal.new";
        Assert.NotNull(LogBackups.Restore(bench.Place, backup, Now, null).Reason);
        bench.Disk.Fails = null;
        Assert.Equal(before, files.Select(File.ReadAllBytes));
        using var log = bench.Open();
        Assert.Empty(log.Notes);
    }

    [Fact]
    public void With_a_torn_end_what_is_sound_is_backed_up()
    {
        using var bench = Bench.Filled();
        var sound = File.ReadAllBytes(bench.Place.Journal);
        File.AppendAllText(bench.Place.Journal, "10 {\"kind\":\"row");
        var made = Called.In(bench.Place.Folder, "backup", "--json");
        Assert.Equal((0, ""), (made.Code, made.Error));
        Assert.Equal(sound, File.ReadAllBytes(Assert.Single(Directory.GetFiles(bench.Place.Backups))));
    }

    private static BackupMade Made(Bench bench, int keep, DateTimeOffset now, string? folder = null)
    {
        using var log = bench.Open(LogUse.Read);
        return LogBackups.Make(log, folder ?? bench.Place.Backups, keep, now, null)
            .Match(made => made, reason => throw new InvalidOperationException(reason));
    }
}
