using System.Reflection;
using System.Runtime.Versioning;
using Viscolog.Output;
using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Output;

/// <summary>
/// Who may read a file never becomes more than it was, links are not followed, and no output goes over a log's own files.
/// </summary>
[SupportedOSPlatform("linux")]
public sealed class RightsTests : IDisposable
{
    private const UnixFileMode Own = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    private const UnixFileMode Group = Own | UnixFileMode.GroupRead;

    private readonly TemporaryFolder _folder = new();
    private readonly string _log;

    public RightsTests()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "rights are those of Unix");
        _log = _folder.Of("log");
        Done("import", Checkout.Sample("lantern-gel-06.csv"));
    }

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData(Own)]
    [InlineData(Group)]
    [InlineData(Group | UnixFileMode.OtherRead)]
    public void Whatever_is_made_of_a_log_is_open_to_those_who_may_read_its_journal(UnixFileMode mode)
    {
        SetAll(mode);
        Done("import", Checkout.Sample("lantern-gel-07.csv"));
        Done("verify");
        Done("backup");
        // Made anew: the query copy, its seal; and put back: the journal.
        File.Delete(Place.Copy);
        File.Delete(Place.Seal);
        Done("runs");
        File.AppendAllText(Place.Journal, "3");
        Done("import", Checkout.Sample("lantern-gel-08-read-early.csv"));
        Done("restore", Directory.GetFiles(Place.Backups)[0]);
        AreAll(mode);
    }

    [Fact]
    public void A_backup_that_is_open_to_more_opens_no_journal()
    {
        Done("backup");
        SetAll(Own);
        var backup = Directory.GetFiles(Place.Backups)[0];
        File.SetUnixFileMode(backup, Group | UnixFileMode.OtherRead);
        Done("restore", backup);
        Assert.Equal(Own, File.GetUnixFileMode(Place.Journal));
    }

    [Fact]
    public void A_journal_written_again_from_the_copy_is_open_to_no_more()
    {
        SetAll(Own);
        Done("runs");
        Done("restore", "--from-copy");
        AreAll(Own);
    }

    /// <summary>LiteDB's own log beside the query copy holds what is being added.</summary>
    [Fact]
    public void What_lies_beside_an_open_log_is_open_to_no_more()
    {
        SetAll(Own);
        using var log = BenchLog.Open(new(_log), LogUse.Write, TimeProvider.System, null).Made!;
        log.Add(1, new() { Note = "seen" });
        foreach (var path in Directory.GetFiles(_log).Where(p => p != Place.Lock && p != Place.Holder))
        {
            Assert.Equal((path, Own), (path, File.GetUnixFileMode(path)));
        }
    }

    [Theory]
    [InlineData("report", "1", "--out", "x.html")]
    [InlineData("report", "1", "--out", "x.txt")]
    [InlineData("plot", "1", "-o", "x.svg")]
    [InlineData("export", "1", "-o", "x.csv")]
    [InlineData("practice", "scores", "-o", "x.csv")]
    public void A_file_that_is_overwritten_keeps_the_rights_it_had(params string[] call)
    {
        var path = _folder.Of(call[^1]);
        foreach (var mode in new[] { Own, Group, Group | UnixFileMode.OtherRead | UnixFileMode.OtherWrite })
        {
            File.WriteAllText(path, "before");
            File.SetUnixFileMode(path, mode);
            Done([.. call[..^1], path, "--force"]);
            Assert.Equal(mode, File.GetUnixFileMode(path));
            Assert.False(File.ReadAllText(path) == "before", "it was not written");
        }
    }

    [Fact]
    public void Links_in_the_place_of_holder_and_torn_end_are_not_followed()
    {
        var theirs = _folder.Of("theirs");
        foreach (var link in new[] { Place.Holder, Place.Torn })
        {
            File.WriteAllText(theirs, "somebody's own");
            File.Delete(link);
            File.CreateSymbolicLink(link, theirs);
        }

        File.Delete(Place.Seal);
        File.AppendAllText(Place.Journal, "99 {\"kind\":");
        Done("import", Checkout.Sample("lantern-gel-07.csv"));
        Assert.Equal("somebody's own", File.ReadAllText(theirs));
    }

    [Theory]
    [InlineData(true, "import", "FILE")]
    [InlineData(true, "runs")]
    [InlineData(false, "import", "FILE")]
    [InlineData(false, "runs")]
    [InlineData(false, "restore", "BACKUP")]
    public void A_link_in_the_place_of_the_lock_is_refused(bool leadsSomewhere, params string[] call)
    {
        Done("backup");
        var theirs = _folder.Of("theirs");
        if (leadsSomewhere)
        {
            File.WriteAllText(theirs, "somebody's own");
        }

        File.Delete(Place.Lock);
        File.CreateSymbolicLink(Place.Lock, theirs);
        string[] named =
        [
            .. call.Select(a => a switch
            {
                "FILE" => Checkout.Sample("lantern-gel-07.csv"),
                "BACKUP" => Directory.GetFiles(Place.Backups)[0],
                _ => a,
            }),
        ];
        var called = Called.In(_log, named);
        Assert.Equal(4, called.Code);
        Assert.Contains("is a link, not a file of a log", called.Error, StringComparison.Ordinal);
        Assert.Equal(leadsSomewhere, File.Exists(theirs));
    }

    [Fact]
    public void A_link_in_the_place_of_the_holder_is_not_read()
    {
        using var held = BenchLog.Open(new(_log), LogUse.Write, TimeProvider.System, null).Made!;
        File.WriteAllText(_folder.Of("theirs"), "somebody's own");
        File.Delete(Place.Holder);
        File.CreateSymbolicLink(Place.Holder, _folder.Of("theirs"));
        Assert.DoesNotContain("somebody's own", LogLock.BusyWords(Place), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("export", "1", "-o")]
    [InlineData("export", "--materials", "-o")]
    [InlineData("report", "1", "--out")]
    [InlineData("batch", "1", "--to", "5kg", "--out")]
    [InlineData("plot", "1", "-o")]
    [InlineData("practice", "scores", "-o")]
    [InlineData("practice", "play", "read", "end", "--pot", "easy", "-o")]
    public void No_output_goes_over_a_file_of_a_log(params string[] call)
    {
        Done("backup");
        var before = Directory.GetFiles(_log, "*", SearchOption.AllDirectories)
            .ToDictionary(p => p, File.ReadAllBytes, StringComparer.Ordinal);
        foreach (var path in before.Keys.Append(_folder.Of("elsewhere/READINGS.Journal")))
        {
            Assert.NotEqual(0, Called.In(_log, [.. call, path, "--force"]).Code);
        }

        Assert.All(before, b => Assert.Equal(b.Value, File.ReadAllBytes(b.Key)));
    }

    /// <summary>What a log has, the rule knows.</summary>
    [Fact]
    public void Every_file_of_a_log_is_kept()
    {
        foreach (var property in typeof(LogPlace).GetProperties(BindingFlags.Instance | BindingFlags.Public)
            .Where(
                p => p.PropertyType == typeof(string)
                    && p.Name is not (nameof(LogPlace.Folder) or nameof(LogPlace.Backups) or nameof(LogPlace.Odd))))
        {
            Assert.True(NamedFile.Kept((string)property.GetValue(Place)!) is not null, property.Name);
        }

        Assert.Null(NamedFile.Kept(_folder.Of("readings.csv")));
    }

    private LogPlace Place => new(_log);

    private void Done(params string[] call)
    {
        var called = Called.In(_log, call);
        Assert.True(called.Code == 0, called.Error);
    }

    private void SetAll(UnixFileMode mode)
    {
        foreach (var path in Held())
        {
            File.SetUnixFileMode(path, mode);
        }
    }

    private void AreAll(UnixFileMode mode) => Assert.All(Held(), p => Assert.Equal((p, mode), (p, File.GetUnixFileMode(p))));

    /// <summary>All files of the log that hold something of it.</summary>
    private IEnumerable<string> Held() => Directory.GetFiles(_log, "*", SearchOption.AllDirectories).Where(p => p != Place.Lock);
}
