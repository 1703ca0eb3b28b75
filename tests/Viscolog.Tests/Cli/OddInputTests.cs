using System.Diagnostics;
using System.Net.Sockets;
using System.Text.RegularExpressions;
using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Tables;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>Pipes, devices and sockets in the place of files: read once, to a bound, or refused; nothing hangs.</summary>
public sealed class OddInputTests : IDisposable
{
    private const string RunText = "# name: piped\n# base_g: 100\n# thickener: T\n# target_mpas: 5000\nviscosity_mpas\n900\n";

    private readonly TemporaryFolder _folder = new();

    public OddInputTests() => Assert.SkipUnless(OperatingSystem.IsLinux(), "names of pipes and devices are Linux's");

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("advise", RunText, 0)]
    [InlineData("import", RunText, 0)]
    [InlineData("import", "# viscolog-materials: 1\nkind,name\nbase,B\n", 0)]
    [InlineData("import", "# viscolog-oils: 1\ndate,method,oil,certified_mpas,certified_temp_c,viscosity_mpas,temp_c\n", 0)]
    [InlineData("import", "nothing of the kind", 2)]
    public void A_pipe_with_a_writer_is_read_once_and_whole(string command, string text, int code)
    {
        var pipe = Pipe("a.csv");
        var writing = Begun(() => File.WriteAllText(pipe, text));
        var called = Called.In(_folder.Of("log"), command, pipe);
        writing.Join();
        Assert.True(called.Code == code, called.Error);
    }

    [Fact]
    public void A_pipe_that_nobody_writes_to_is_refused_after_a_while()
        => Refused("a pipe that nobody writes to", Called.With("advise", Pipe("a.csv")));

    [Fact]
    public void Waiting_for_a_pipe_can_be_stopped()
    {
        var pipe = Pipe("a.csv");
        using var stop = new CancellationTokenSource();
        using var released = new ManualResetEventSlim();
        // Somebody holds it open and writes nothing.
        var holding = Begun(() =>
        {
            using var holder = new FileStream(pipe, FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
            stop.Cancel();
            released.Wait();
        });
        Assert.ThrowsAny<OperationCanceledException>(() => InputFile.Read(pipe, "a run file", stop.Token));
        released.Set();
        holding.Join();
    }

    [Theory]
    [InlineData("advise")]
    [InlineData("import")]
    [InlineData("flow")]
    [InlineData("trend")]
    public void What_never_ends_is_read_to_a_bound(string command)
        => Refused("more than 256 MiB", Called.In(_folder.Of("log"), command, "/dev/zero"));

    [Fact]
    public void A_device_without_content_and_a_socket_are_refused()
    {
        Refused("an empty file", Called.With("advise", "/dev/null"));
        using var socket = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        socket.Bind(new UnixDomainSocketEndPoint(_folder.Of("s.csv")));
        Refused("nothing (", Called.With("advise", _folder.Of("s.csv")));
    }

    [Fact]
    public void A_pipe_in_the_place_of_an_export_is_not_read()
    {
        File.WriteAllText(_folder.Of("b.csv"), RunText);
        Assert.Equal(0, Called.In(_folder.Of("log"), "import", _folder.Of("b.csv")).Code);
        Refused("is a pipe", Called.In(_folder.Of("log"), "export", "1", "-o", Pipe("a.csv")));
    }

    [Fact]
    public void In_a_folder_they_are_passed_over_with_a_line()
    {
        Pipe("a.csv");
        File.WriteAllText(_folder.Of("b.csv"), RunText);
        File.CreateSymbolicLink(_folder.Of("c.csv"), "/dev/zero");
        var imported = Called.In(_folder.Of("log"), "import", _folder.FullPath);
        Assert.True(imported.Code == 0, imported.Error);
        Assert.Contains("1 new run", imported.Output, StringComparison.Ordinal);
        Assert.Equal(2, imported.Error.Split("a pipe, a device or a socket, skipped").Length - 1);
        var advised = Called.With("advise", _folder.Of("b.csv"), "--history", _folder.FullPath);
        Assert.True(advised.Code == 0, advised.Error);
        Assert.Contains("a.csv: a pipe, a device or a socket, skipped", advised.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_log_is_not_restored_from_them()
    {
        foreach (var path in new[] { "/dev/zero", "/dev/null", Pipe("p.journal") })
        {
            var called = Called.In(_folder.Of("log"), "restore", path);
            Assert.Equal(4, called.Code);
            Assert.Contains("a pipe, a device or a socket", called.Error, StringComparison.Ordinal);
        }

        Assert.False(Path.Exists(_folder.Of("log")));
    }

    /// <summary>In the place of any of the log's own files they are named, and nothing is read of them or written to them.</summary>
    [Theory]
    [InlineData("readings.journal")]
    [InlineData("readings.db")]
    [InlineData("readings-log.db")]
    [InlineData("readings.seal")]
    [InlineData("readings.lock")]
    [InlineData("readings.holder")]
    public void A_log_of_them_is_refused(string name)
    {
        var log = _folder.Of("log");
        BenchLog.Open(new(log), LogUse.Write, TimeProvider.System, null).Made!.Dispose();
        File.Delete(Path.Combine(log, name));
        Pipe(Path.Combine("log", name));
        foreach (var call in new string[][] { ["runs"], ["verify"], ["import", Checkout.Sample("lantern-gel-06.csv")], ["backup"] })
        {
            var called = Called.In(log, call);
            Assert.Equal(4, called.Code);
            Assert.Contains($"{name} is a pipe", called.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Games_that_are_none_are_left_out_of_the_sheet()
    {
        var log = _folder.Of("log");
        Assert.Equal(0, Called.In(log, "practice", "play", "read", "end", "--pot", "easy", "--player", "A").Code);
        var games = Path.Combine(PracticeLog.FolderOf(new LogPlace(log)), "games");
        var game = File.ReadAllText(Directory.GetFiles(games)[0]);
        Pipe(Path.Combine(games, "x.json"));
        File.WriteAllText(
            Path.Combine(games, "y.json"),
            Regex.Replace(game, "\"body_mpas\": *[0-9.]+", "\"body_mpas\":1e999", RegexOptions.None, TimeSpan.FromSeconds(1)));
        foreach (var call in new string[][] { ["practice", "scores"], ["practice", "scores", "--json"] })
        {
            var scores = Called.In(log, call);
            Assert.True(scores.Code == 0, scores.Error);
            Assert.Contains("left out; it is a pipe", scores.Error + scores.Output, StringComparison.Ordinal);
            Assert.Contains("y.json: left out; it is not a game", scores.Error + scores.Output, StringComparison.Ordinal);
        }
    }

    private static void Refused(string said, Called called)
    {
        Assert.Equal(2, called.Code);
        Assert.Contains(said, called.Error, StringComparison.Ordinal);
    }

    private static Thread Begun(ThreadStart work)
    {
        var thread = new Thread(work) { IsBackground = true };
        thread.Start();
        return thread;
    }

    private string Pipe(string name)
    {
        var path = _folder.Of(name);
        using var made = Process.Start("mkfifo", [path]);
        made.WaitForExit();
        return path;
    }
}
