using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Store.Journal;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>What can happen to a log's files; docs/reliability.md has the longer rounds.</summary>
public sealed class FaultTests
{
    [Fact]
    public void A_seal_from_before_is_no_reason_to_refuse_what_came_after_it()
    {
        using var bench = Bench.Filled();
        var seal = File.ReadAllBytes(bench.Place.Seal);
        using (var log = bench.Open())
        {
            Assert.IsType<WriteOutcome.Saved>(log.Add(1, Bench.Row(950)));
        }

        File.WriteAllBytes(bench.Place.Seal, seal);
        using var again = bench.Open(LogUse.Read);
        Assert.Equal(6, again.Run(1)!.File.Rows.Length);
    }

    [Fact]
    public void A_journal_that_is_shorter_than_it_was_closed_is_damage()
    {
        using var bench = Bench.Filled();
        var before = new Snapshot(bench.Place);
        var journal = before.Bytes(bench.Place.Journal);
        var lines = journal.AsSpan(0, journal.Length - 1).LastIndexOf((byte)'\n') + 1;
        before.PutBack((bench.Place.Journal, journal[..lines]));
        Assert.Contains("is missing: the log was closed with", bench.Refusal(), StringComparison.Ordinal);
    }

    [Fact]
    public void While_one_adds_to_the_log_others_read_what_it_has_saved_and_are_told_who_it_is()
    {
        using var bench = Bench.Filled();
        using (var log = bench.Open())
        {
            Assert.IsType<WriteOutcome.Saved>(log.Add(1, Bench.Row(977)));
            Assert.IsType<WriteOutcome.Saved>(log.SetClock(1, new(DateTimeOffset.UnixEpoch, null)));
            var busy = bench.Busy(LogUse.Write);
            var who = FormattableString.Invariant($"process {Environment.ProcessId} of {Environment.UserName}");
            Assert.Contains(who, busy, StringComparison.Ordinal);
            var before = new Snapshot(bench.Place);
            var shown = Called.In(bench.Place.Folder, "show", "1");
            Assert.True(shown.Code == 0, shown.Error);
            Assert.Contains("977", shown.Output, StringComparison.Ordinal);
            Assert.Contains(who, shown.Error, StringComparison.Ordinal);
            Assert.Contains("is adding to the log; this is what it had saved so far", shown.Error, StringComparison.Ordinal);
            using (var reader = bench.Open(LogUse.Read))
            {
                Assert.Equal(6, reader.Run(1)!.Rows.Length);
                Assert.IsType<WriteOutcome.Saved>(log.Add(1, Bench.Row(978)));
                Assert.Equal(6, reader.Run(1)!.Rows.Length);
            }

            Assert.Equal(0, Called.In(bench.Place.Folder, "advise", Checkout.Sample("lantern-gel-07.csv")).Code);
            Assert.NotEqual(before.Bytes(bench.Place.Journal), File.ReadAllBytes(bench.Place.Journal));
        }

        Assert.Empty(Called.In(bench.Place.Folder, "runs").Error);
    }

    [Fact]
    public void The_line_that_is_being_written_is_left_out_by_who_reads_beside()
    {
        using var bench = Bench.Filled();
        using var log = bench.Open();
        var journal = File.ReadAllBytes(bench.Place.Journal);
        Assert.IsType<WriteOutcome.Saved>(log.Add(1, Bench.Row(977)));
        var whole = File.ReadAllBytes(bench.Place.Journal);
        using var beside = new Bench();
        Directory.CreateDirectory(beside.Place.Folder);
        for (var cut = journal.Length + 1; cut < whole.Length; cut += 7)
        {
            File.WriteAllBytes(beside.Place.Journal, whole[..cut]);
            using (new FileStream(beside.Place.Lock, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None))
            using (var reader = beside.Open(LogUse.Read))
            {
                Assert.Equal(5, reader.Run(1)!.Rows.Length);
            }

            Assert.Equal(whole[..cut], File.ReadAllBytes(beside.Place.Journal));
            File.Delete(beside.Place.Lock);
        }
    }

    [Fact]
    public void Several_may_read_at_once_and_nobody_adds_meanwhile()
    {
        using var bench = Bench.Filled();
        using (var one = bench.Open(LogUse.Read))
        using (var other = bench.Open(LogUse.Read))
        {
            Assert.Equal(Snapshot.All(one), Snapshot.All(other));
            bench.Busy(LogUse.Write);
        }

        bench.Open().Dispose();
    }

    [Theory]
    [InlineData("journal")]
    [InlineData("copy")]
    [InlineData("folder")]
    public void What_is_not_ours_is_refused_and_left_as_it_is(string where)
    {
        foreach (var (what, bytes) in Foreign())
        {
            using var bench = Bench.Filled();
            var path = where switch { "journal" => bench.Place.Journal, "copy" => bench.Place.Copy, _ => bench.Place.Folder };
            if (where == "folder")
            {
                Directory.Delete(path, recursive: true);
            }
            else
            {
                File.Delete(path);
            }

            if (where == "copy" && bytes is [])
            {
                // Nothing is there that could be anybody's: it is made anew.
                continue;
            }

            if (bytes is null)
            {
                if (where == "folder")
                {
                    continue;
                }

                Directory.CreateDirectory(path);
            }
            else
            {
                File.WriteAllBytes(path, bytes);
            }

            string[][] calls =
            [
                ["runs"], ["show", "1"], ["verify"], ["backup"], ["export", "--all", "-o", bench.Place.Folder + "-out"],
                ["import", Checkout.Sample("lantern-gel-06.csv")],
            ];
            foreach (var args in calls)
            {
                var called = Called.In(bench.Place.Folder, args);
                Assert.True(called.Code == 4, $"{what} as {where}, {args[0]}: {called.Code} {called.Error}{called.Output}");
                Assert.Contains(path, called.Error, StringComparison.Ordinal);
                Assert.Equal("", called.Output);
                Assert.True(
                    bytes is null ? Directory.Exists(path) : File.ReadAllBytes(path).AsSpan().SequenceEqual(bytes),
                    $"{what} as {where}, {args[0]}");
            }

            var advised = Called.In(bench.Place.Folder, "advise", Checkout.Sample("lantern-gel-07.csv"));
            Assert.Equal(0, advised.Code);
            Assert.StartsWith("warning: going on without earlier runs: ", advised.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_log_is_not_made_where_the_folder_above_is_missing()
    {
        using var folder = new TemporaryFolder();
        var called = Called.In(folder.Of("no/log"), "import", Checkout.Sample("lantern-gel-06.csv"));
        Assert.Equal(
            (4, $"there is no folder {folder.Of("no")} to make the log in; make it first or name another with --log\n"),
            (called.Code, called.Error));
        Assert.Empty(folder.Names);
    }

    [Fact]
    public void A_query_copy_without_its_journal_is_not_taken_for_a_new_log()
    {
        using var bench = Bench.Filled();
        File.Delete(bench.Place.Journal);
        var called = Called.In(bench.Place.Folder, "import", Checkout.Sample("lantern-gel-06.csv"));
        Assert.Equal(4, called.Code);
        Assert.Contains("readings.journal is missing", called.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(bench.Place.Journal));
    }

    [Fact]
    public void A_stopped_import_leaves_the_log_as_it_was()
    {
        using var bench = Bench.Filled();
        var journal = File.ReadAllBytes(bench.Place.Journal);
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        using (var log = bench.Open())
        {
            Assert.Throws<OperationCanceledException>(() => log.Import(Bench.File("glaze 2", 4), stop.Token));
            Assert.Single(log.Runs());
            Assert.IsType<WriteOutcome.Saved>(log.Import(Bench.File("glaze 3", 4), CancellationToken.None).Outcome);
        }

        Assert.True(File.ReadAllBytes(bench.Place.Journal).AsSpan().StartsWith(journal));
        Assert.Null(LogCheck.Of(bench.Open(), null).Difference);
    }

    [Fact]
    public void When_the_query_copy_fails_before_anything_is_written_it_is_said_and_mended_at_the_next_start()
    {
        using var bench = Bench.Filled();
        using (var log = bench.Open())
        {
            BreakCopy(log);
            Assert.StartsWith(
                "the query copy failed, nothing was saved",
                Assert.IsType<WriteOutcome.NotSaved>(log.Add(1, Bench.Row(950))).Reason,
                StringComparison.Ordinal);
            Assert.IsType<WriteOutcome.NotSaved>(log.Add(1, Bench.Row(951)));
            Assert.IsType<WriteOutcome.NotSaved>(log.Import(Bench.File("glaze 2", 1), CancellationToken.None).Outcome);
        }

        using var again = bench.Open(LogUse.Read);
        Assert.Contains("rebuilt", Assert.Single(again.Notes), StringComparison.Ordinal);
        Assert.Equal(5, again.Run(1)!.File.Rows.Length);
    }

    // The disk under LiteDB fails: its file is closed behind its back.
    private static void BreakCopy(BenchLog log)
    {
        var copy = (QueryCopy)typeof(BenchLog)
            .GetField("_copy", System.Reflection.BindingFlags.Instance | System.Reflection.BindingFlags.NonPublic)!.GetValue(log)!;
        copy.Dispose();
    }

    [Fact]
    public void A_query_copy_beside_which_a_log_of_changes_lies_is_made_anew()
    {
        using var bench = Bench.Filled();
        File.WriteAllText(bench.Place.CopyLog, "left over");
        using (var log = bench.Open(LogUse.Read))
        {
            Assert.StartsWith("the query copy was not as it was left and was rebuilt", Assert.Single(log.Notes), StringComparison.Ordinal);
            Assert.Equal(5, log.Run(1)!.File.Rows.Length);
        }

        Assert.False(File.Exists(bench.Place.CopyLog));
    }

    [Fact]
    public void A_whole_journal_of_a_newer_version_is_left_to_that_version()
    {
        using var bench = new Bench();
        Directory.CreateDirectory(bench.Place.Folder);
        var journal = JournalWriter.FirstLine(new(JournalFile.Version + 1, Guid.Empty));
        File.WriteAllBytes(bench.Place.Journal, journal);
        Assert.Contains("was written by a newer version of this program; nothing was changed", bench.Refusal(), StringComparison.Ordinal);
        Assert.Equal(journal, File.ReadAllBytes(bench.Place.Journal));
    }

    [Fact]
    public void A_query_copy_of_an_older_schema_is_made_anew()
    {
        using var bench = Bench.Filled();
        File.WriteAllBytes(bench.Place.Copy, OtherDatabase(0x56490000));
        using (var log = bench.Open(LogUse.Read))
        {
            Assert.Equal("the query copy was of an older version and was rebuilt from the journal", Assert.Single(log.Notes));
            Assert.Equal(5, log.Run(1)!.File.Rows.Length);
        }

        Assert.Empty(bench.Open(LogUse.Read).Notes);
    }

    private static IEnumerable<(string What, byte[]? Bytes)> Foreign()
    {
        yield return ("a CSV", "a,b\n1,2\n"u8.ToArray());
        yield return ("a long CSV", Enumerable.Repeat("12,34\n"u8.ToArray(), 5000).SelectMany(b => b).ToArray());
        yield return ("an empty file", []);
        yield return ("a folder", null);
        yield return ("another LiteDB file", OtherDatabase(null));
        yield return ("a query copy of a newer schema", OtherDatabase(0x56490000 | (CopyFile.Schema + 1)));
        yield return ("a journal of a newer version", JournalWriter.FirstLine(new(JournalFile.Version + 1, Guid.Empty)));
    }

    private static byte[] OtherDatabase(int? version)
    {
        using var folder = new TemporaryFolder();
        using (var database = new LiteDB.LiteDatabase(folder.Of("other.db")))
        {
            database.GetCollection("letters").Insert(new LiteDB.BsonDocument { ["a"] = 1 });
            database.UserVersion = version ?? 0;
        }

        return File.ReadAllBytes(folder.Of("other.db"));
    }
}
