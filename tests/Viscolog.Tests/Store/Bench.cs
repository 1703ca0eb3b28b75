using Viscolog.Output;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Tests.RunFiles;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>A log in a folder of its own.</summary>
internal sealed class Bench : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public Bench() => Place = new(_folder.Of("log")) { Disk = Disk };

    /// <summary>A log in a certain folder, which goes with it.</summary>
    public Bench(string folder) => Place = new(folder) { Disk = Disk };

    /// <summary>The disk that the log is on.</summary>
    public WatchedDisk Disk { get; } = new();

    public LogPlace Place { get; }

    public BenchLog Open(LogUse use = LogUse.Write)
        => Outcome(use).Match(log => log, reason => throw new InvalidOperationException(reason));

    public Outcome<BenchLog> Outcome(LogUse use = LogUse.Read) => BenchLog.Open(Place, use, TimeProvider.System, null);

    /// <summary>Why the log is refused, which is not because somebody else has it.</summary>
    public string Refusal(string of = "")
    {
        var outcome = Outcome();
        outcome.Made?.Dispose();
        Assert.True(outcome.Reason is not null, of);
        Assert.DoesNotContain("is busy", outcome.Reason, StringComparison.Ordinal);
        return outcome.Reason;
    }

    /// <summary>The words for a log that somebody else has.</summary>
    public string Busy(LogUse use = LogUse.Read)
    {
        var reason = Outcome(use).Reason;
        Assert.StartsWith($"the log in {Place.Folder} is busy: ", reason, StringComparison.Ordinal);
        return reason!;
    }

    /// <summary>A run file with so many readings, each with an addition.</summary>
    public static RunFile File(string name, int rows, string more = "")
        => FileText.Read($"# name: {name}\n# base: Gable\n# base_g: 120\n# thickener: TA\n# thickener: TU\n"
            + $"{more}thickener,added_g,stir_s,wait_s,viscosity_mpas,note\n"
            + string.Concat(Enumerable.Range(0, rows).Select(i => FormattableString.Invariant($"TA,0.01,10,30,{800 + i},\n"))));

    public static MergePlan Plan((WriteOutcome Outcome, MergePlan? Plan) imported)
        => imported.Outcome is WriteOutcome.Saved ? imported.Plan! : throw new InvalidOperationException(imported.Outcome.Trouble);

    public void Dispose()
    {
        _folder.Dispose();
        if (Directory.Exists(Place.Folder))
        {
            Directory.Delete(Place.Folder, recursive: true);
        }
    }

    /// <summary>A log with one run of five rows, closed.</summary>
    public static Bench Filled()
    {
        var bench = new Bench();
        using var log = bench.Open();
        log.Import(File("glaze 1", 4), CancellationToken.None);
        Assert.IsType<WriteOutcome.Saved>(log.Add(1, Row(920)));
        return bench;
    }

    /// <summary>A row with an addition and a reading.</summary>
    public static FileRow Row(int mpas)
        => FileText.Read(FormattableString.Invariant($"# base_g: 120\n# thickener: TA\nadded_g,wait_s,viscosity_mpas\n0.1,30,{mpas}\n"))
            .Contents().Single();
}

/// <summary>Changes that tests ask for in one word.</summary>
internal static class RowReplacement
{
    /// <summary>Makes a row void and puts another in its place, as the bench does.</summary>
    public static WriteOutcome Replace(this BenchLog log, int run, int row, string reason, FileRow by)
        => log.Edit(run, new RunEdit.Void(row, reason), new RunEdit.Add(by with { Replaces = true }, row));
}
