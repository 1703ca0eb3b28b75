using System.Diagnostics;
using System.Text.Json;
using Viscolog.Sharing;
using Viscolog.Tests.Store;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Sharing;

/// <summary>
/// The wire breaks, the server crashes, passwords are wrong: nothing is lost, nothing is doubled, and the bench goes on. Where
/// VISCOLOG_LONG is set there are a thousand rounds.
/// </summary>
[Collection(PostgresTests.Name)]
public sealed class ShareFaultTests(PostgresServer server)
{
    private static readonly bool IsLong = Environment.GetEnvironmentVariable("VISCOLOG_LONG") is "1";

    [Theory]
    [InlineData(11)]
    public void However_often_the_wire_breaks_nothing_is_lost_or_doubled(int seed)
    {
        server.Need();
        var database = server.Database("north", "south");
        using var wire = new CutWire(server.Port);
        using var north = new SharingBench(database, "north");
        using var south = new SharingBench(database, "south");
        north.Join(wire.Port);
        south.Join(wire.Port);
        var random = new Random(seed);
        var (broken, runs) = (0, 0);
        for (var round = 0; round < (IsLong ? 1000 : 40); round++)
        {
            wire.BreaksAfter = null;
            if (round % 3 == 0)
            {
                using var log = north.Open();
                log.Begin(Bench.File(FormattableString.Invariant($"run {runs++}"), random.Next(1, 200)));
            }

            // What connecting takes, then somewhere in what is sent and fetched.
            wire.BreaksAfter = random.Next(1500, 30_000);
            wire.Doubles = round % 5 == 4;
            wire.Delay = TimeSpan.FromMilliseconds(random.Next(3));
            var called = (round % 2 == 0 ? north : south).Call("share");
            Assert.True(called.Code is 0 or 4, called.Error);
            broken += called.Code == 4 ? 1 : 0;
        }

        wire.BreaksAfter = null;
        north.Share();
        south.Share();
        Assert.Equal(north.Share().State, south.Share().State);
        Assert.True(broken > 5);
        Assert.Equal(
            File.ReadAllLines(north.Place.Journal).Length,
            database.Count($"select * from viscolog.line where log = '{Id(north)}'"));
        using var others = south.Open();
        Assert.Equal(runs, others.SharedRuns().Length);
    }

    [Fact]
    public void A_server_that_crashes_while_it_is_sent_to_has_all_of_it_in_the_end()
    {
        server.Need();
        var database = server.Database("north", "south");
        using var north = new SharingBench(database, "north");
        using var south = new SharingBench(database, "south");
        north.Join();
        south.Join();
        var random = new Random(5);
        for (var round = 0; round < (IsLong ? 30 : 3); round++)
        {
            using (var log = north.Open())
            {
                log.Begin(Bench.File(FormattableString.Invariant($"run {round}"), 8000));
            }

            var sharing = new Thread(() => north.Call("share"));
            sharing.Start();
            Thread.Sleep(random.Next(50, 1200));
            server.Crash();
            sharing.Join();
        }

        Assert.True(north.Share().Life == 1);
        south.Share();
        Assert.Equal(north.Share().State, south.Share().State);
        Assert.Equal(
            File.ReadAllLines(north.Place.Journal).Length,
            database.Count($"select * from viscolog.line where log = '{Id(north)}'"));
    }

    [Fact]
    public void What_is_saved_at_one_bench_is_seen_at_another_beside_its_screens_and_sent_after_the_server_was_away()
    {
        server.Need();
        var database = server.Database("north", "south");
        using var wire = new CutWire(server.Port);
        using var north = new SharingBench(database, "north");
        using var south = new SharingBench(database, "south");
        north.Join(wire.Port);
        south.Join();
        using var log = north.Open();
        log.Begin(Bench.File("live", 1));
        using var sending = SharePost.Of(log, TimeProvider.System)!;
        using var there = south.Open();
        using var seeing = SharePost.Of(there, TimeProvider.System)!;
        Until(() => there.SharedRuns() is [{ File.Rows.Length: 1 }]);
        log.Add(1, new() { Note = "more" });
        Until(() => there.SharedRuns() is [{ File.Rows.Length: 2 }]);
        Assert.StartsWith("shared, 1 other bench", seeing.State.Words, StringComparison.Ordinal);

        // Nothing gets through for a while: the log goes on, and what was saved meanwhile is sent when it does.
        wire.BreaksAfter = 0;
        server.Crash();
        log.Add(1, new() { Note = "alone" });
        Until(() => sending.State.Words.Contains("can't be reached", StringComparison.Ordinal));
        wire.BreaksAfter = null;
        Until(() => there.SharedRuns() is [{ File.Rows.Length: 3 }]);
        Until(() => sending.State.Words.StartsWith("shared, ", StringComparison.Ordinal));
    }

    [Fact]
    public void A_program_that_is_killed_while_it_shares_has_shared_all_of_it_the_next_time()
    {
        server.Need();
        var database = server.Database("north", "south");
        using var north = new SharingBench(database, "north");
        using var south = new SharingBench(database, "south");
        north.Join();
        south.Join();
        var random = new Random(3);
        for (var round = 0; round < (IsLong ? 100 : 6); round++)
        {
            using (var log = north.Open())
            {
                log.Begin(Bench.File(FormattableString.Invariant($"run {round}"), 3000));
            }

            var bench = round % 2 == 0 ? north : south;
            using var killed = Process.Start(new ProcessStartInfo(
                "dotnet", [Path.Combine(AppContext.BaseDirectory, "viscolog.dll"), "share", "--log", bench.Place.Folder])
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
                UseShellExecute = false,
            })!;
            if (!killed.WaitForExit(random.Next(300, 1500)))
            {
                killed.Kill();
                killed.WaitForExit();
            }
        }

        north.Share();
        south.Share();
        Assert.Equal(north.Share().State, south.Share().State);
        Assert.Equal(
            File.ReadAllLines(north.Place.Journal).Length,
            database.Count($"select * from viscolog.line where log = '{Id(north)}'"));
        Assert.Contains("every checksum holds", north.Call("verify").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_server_whose_disk_is_full_gets_the_rest_once_there_is_room()
    {
        server.Need();
        Assert.SkipUnless(OperatingSystem.IsLinux() && Environment.IsPrivilegedProcess, "only root can make a small disk");
        using var small = PostgresServer.OnSmallDisk(80);
        var database = small.Database("north", "south");
        using var north = new SharingBench(database, "north");
        using var south = new SharingBench(database, "south");
        north.Join();
        south.Join();
        var full = false;
        for (var round = 0; round < 30 && !full; round++)
        {
            using (var log = north.Open())
            {
                log.Begin(Bench.File(FormattableString.Invariant($"run {round}"), 20_000));
            }

            full = north.Call("share").Code == 4;
        }

        Assert.True(full);
        small.Grow(400);
        north.Share();
        south.Share();
        Assert.Equal(north.Share().State, south.Share().State);
        Assert.Equal(
            File.ReadAllLines(north.Place.Journal).Length,
            database.Count($"select * from viscolog.line where log = '{Id(north)}'"));
    }

    /// <summary>Order comes from the numbers of lines, never from clocks.</summary>
    [Fact]
    public void Clocks_years_apart_change_nothing()
    {
        server.Need();
        var database = server.Database("north", "south");
        using var north = new SharingBench(database, "north");
        using var south = new SharingBench(database, "south");
        north.Join();
        south.Join();
        string[] sent = ["share", "--log", north.Place.Folder];
        string[] fetched = ["share", "--log", south.Place.Folder];
        foreach (var year in (int[])[1999, 2043, 2026])
        {
            var now = new DateTimeOffset(year, 5, 4, 3, 2, 1, TimeSpan.Zero);
            Assert.Equal(
                0,
                Called.At(now, "new", "base_g=120", FormattableString.Invariant($"name=of {year}"), "--log", north.Place.Folder).Code);
            Assert.Equal(0, Called.At(now, sent).Code);
            Assert.Equal(0, Called.At(now.AddYears(-9), fetched).Code);
        }

        using (var log = south.Open())
        {
            Assert.Equal(
                ["of 1999", "of 2043", "of 2026"],
                log.SharedRuns().OrderBy(r => r.Number).Select(r => r.File.Run.Name!),
                StringComparer.Ordinal);
        }

        Assert.Equal(north.Share().State, south.Share().State);
    }

    [Fact]
    public void A_password_that_is_wrong_or_missing_is_named_and_none_is_kept()
    {
        server.Need();
        var database = server.Database("north");
        server.LockIn("north", database, "right");
        using var north = new SharingBench(database, "north");
        north.Open().Dispose();
        string[] join = ["share", "join", database.Address("north"), "--bench", "north"];
        Assert.Contains("PGPASSWORD", north.Call(join).Error, StringComparison.Ordinal);
        var before = Environment.GetEnvironmentVariable("PGPASSWORD");
        try
        {
            Environment.SetEnvironmentVariable("PGPASSWORD", "wrong");
            Assert.Equal(4, north.Call(join).Code);
            Environment.SetEnvironmentVariable("PGPASSWORD", "right");
            Assert.Equal(0, north.Call(join).Code);
            foreach (var file in Directory.GetFiles(north.Place.Folder, "*", SearchOption.AllDirectories))
            {
                Assert.DoesNotContain("right", File.ReadAllText(file), StringComparison.Ordinal);
            }
        }
        finally
        {
            Environment.SetEnvironmentVariable("PGPASSWORD", before);
            server.LockIn("north", database, null);
        }
    }

    [Fact]
    public void Without_a_server_the_bench_goes_on_and_says_so_and_encryption_is_asked_for_unless_told_otherwise()
    {
        server.Need();
        var database = server.Database("north");
        using var north = new SharingBench(database, "north");
        north.Open().Dispose();
        var address = database.Address("north").Replace("?sslmode=disable", "", StringComparison.Ordinal);
        var plain = north.Call("share", "join", address, "--bench", "north");
        Assert.Equal(4, plain.Code);
        Assert.Contains("SSL", plain.Error, StringComparison.OrdinalIgnoreCase);
        north.Join();
        File.WriteAllText(
            ShareLink.PathOf(north.Place),
            File.ReadAllText(ShareLink.PathOf(north.Place))
                .Replace(FormattableString.Invariant($":{server.Port}/"), ":9/", StringComparison.Ordinal));
        var called = north.Call("share", "--json");
        Assert.Equal(4, called.Code);
        Assert.Contains("nothing is lost", called.Error, StringComparison.Ordinal);
        Assert.Equal("viscolog.error/1", JsonDocument.Parse(called.Output).RootElement.GetProperty("schema").GetString());
        north.Import("lantern-gel-06.csv");
        Assert.Equal(0, north.Call("advise", "1").Code);
    }

    private static Guid Id(SharingBench bench) => Viscolog.Store.Journal.JournalFile.IdOf(bench.Place.Journal)!.Value;

    private static void Until(Func<bool> happened)
    {
        var until = Stopwatch.StartNew();
        while (!happened())
        {
            Assert.True(until.Elapsed < TimeSpan.FromSeconds(40));
            Thread.Sleep(50);
        }
    }
}
