using Viscolog.Output;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Tests.RunFiles;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>
/// A log that was written before, kept as it was: journal, query copy and seal. It opens as it is, says what it said, and the same things
/// done again are written in the same words.
/// </summary>
public sealed class StoredLogTests : IDisposable
{
    private static readonly string Kept = Path.Combine(Checkout.Root, "tests", "Viscolog.Tests", "Data", "stored-log");
    private static readonly StoppedClock Clock = new(new(2026, 11, 26, 14, 0, 0, TimeSpan.Zero));
    private static readonly string[] Files = ["readings.journal", "readings.db", "readings.seal"];
    private readonly TemporaryFolder _folder = new();

    private string Log => _folder.Of("log");

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void It_says_what_it_said(bool anew)
    {
        Copy(anew ? ["readings.journal"] : Files);
        Said("runs.txt", "runs");
        for (var run = 1; run <= 19; run++)
        {
            Said(FormattableString.Invariant($"show-{run}.txt"), "show", FormattableString.Invariant($"{run}"));
        }

        Assert.Equal(0, Called.In(Log, Clock, "export", "--all", "-o", _folder.Of("out")).Code);
        foreach (var path in Directory.EnumerateFiles(_folder.Of("out")).Order(StringComparer.Ordinal))
        {
            ExpectedFile.Check(Path.Combine("log", "export", Path.GetFileName(path)), File.ReadAllText(path));
        }

        Assert.Equal(21, Directory.GetFiles(_folder.Of("out")).Length);
    }

    [Fact]
    public void It_opens_as_it_was_closed_and_holds_what_its_journal_says()
    {
        Copy(Files);
        using (var log = Open(LogUse.Read))
        {
            Assert.Empty(log.Notes);
        }

        Assert.Equal(File.ReadAllBytes(Path.Combine(Kept, "readings.db")), File.ReadAllBytes(Path.Combine(Log, "readings.db")));
        Assert.Null(LogCheck.Of(Open(LogUse.Write), null).Difference);
    }

    [Fact]
    public void Its_records_are_written_as_they_stand()
    {
        using var stream = File.OpenRead(Path.Combine(Kept, "readings.journal"));
        var records = JournalScanner.Records(stream, stream.Length).ToList();
        Directory.CreateDirectory(Log);
        var path = Path.Combine(Log, "readings.journal");
        File.WriteAllBytes(path, JournalWriter.FirstLine((LogRecord.Begun)records[0]));
        using (var journal = new JournalWriter(Disk.Real, path, JournalFile.Scan(path, 0, null)))
        {
            for (var i = 1; i < records.Count; i++)
            {
                var count = records[i] is LogRecord.BatchBegun batch ? batch.Lines : 1;
                var first = count == 1 ? i : i + 1;
                journal.Append(records.Skip(first).Take(count), count, records[i].At!, CancellationToken.None);
                i = count == 1 ? i : first + count;
            }
        }

        Assert.Equal(File.ReadAllBytes(Path.Combine(Kept, "readings.journal")), File.ReadAllBytes(path));
    }

    [Fact]
    public void The_same_done_again_is_logged_in_the_same_words()
    {
        Make();
        Assert.Equal(
            Records(Path.Combine(Kept, "readings.journal")), Records(Path.Combine(Log, "readings.journal")), StringComparer.Ordinal);
    }

    // The first line holds a UUID of its own, and every line a sum of what stands before it.
    private static IEnumerable<string> Records(string journal) => File.ReadLines(journal).Skip(1).Select(l => l[..l.LastIndexOf(' ')]);

    private void Make()
    {
        foreach (var folder in (string[])["", "methods", "pair", "checks", "materials", "oils"])
        {
            Assert.Equal(0, Called.In(Log, Clock, "import", Path.Combine(Kept, "samples", folder)).Code);
        }

        using var log = Open(LogUse.Write);
        var odd = FileText.Read(File.ReadAllText(Path.Combine(Kept, "odd.csv")));
        Assert.IsType<WriteOutcome.Saved>(log.Import(odd, CancellationToken.None).Outcome);
        var number = log.Find(odd)!.Value;
        Assert.Equal(18, number);
        Saved(log.Void(number, 2, "read by \"eye\"; ünsicher\n=again"));
        Saved(log.Replace(number, 4, "spilt", Row(odd, "TA 1,0.25,10,75,4321.5,23.25,8.05,+more,#odd")));
        Saved(log.Add(number, Row(odd, "TB,0.5,0,0.0000001,1e-3,,0,,")));
        Saved(log.Restate(number, odd with { Run = odd.Run with { Target = null, TooStiff = null, Note = "a target\nno more" } }));
        Saved(log.Add(1, new() { Note = "  seen again, \"levels\" — well, 23 °C\r\n" }));
        Saved(log.Void(1, 3, "wrong pot"));
        Saved(log.VoidOil(2, "bubble"));
        Saved(log.AddOil(log.Oils()[0].Row));
        var begun = odd with
        {
            Id = Guid.Parse("0199d3a0-5c1e-7b3a-9f10-2a6b8c4d0e11"),
            UnknownColumns = [],
            Run = odd.Run with { Name = "begun here" },
        };
        Saved(log.Begin(begun.WithoutRows()).Outcome);
        Saved(log.Add(19, Row(odd, "TA 1,1,2,3,4,5,6,,")));
    }

    private static FileRow Row(RunFile odd, string cells)
    {
        var header = FileText.Write(odd.WithoutRows() with { UnknownColumns = [] });
        var lines = header.Split('\n').Where(l => l.StartsWith('#'));
        return FileText.Read(
            string.Join('\n', lines) + "\nthickener,added_g,stir_s,wait_s,viscosity_mpas,temp_c,ph,note,batch colour\n" + cells
                + "\n").Contents().Single();
    }

    private static void Saved(WriteOutcome outcome) => Assert.IsType<WriteOutcome.Saved>(outcome);

    private BenchLog Open(LogUse use) => BenchLog.Open(new(Log), use, Clock, null).Made!;

    private void Copy(string[] files)
    {
        Directory.CreateDirectory(Log);
        foreach (var file in files)
        {
            File.Copy(Path.Combine(Kept, file), Path.Combine(Log, file));
        }
    }

    private void Said(string file, params string[] args)
    {
        var called = Called.In(Log, Clock, args);
        Assert.Equal(0, called.Code);
        ExpectedFile.Check(Path.Combine("log", file), called.Output);
    }
}
