using System.Collections.Immutable;
using Viscolog.Core.Measuring;
using Viscolog.Output;
using Viscolog.RunFiles;
using Viscolog.Store.Copy;
using Viscolog.Store.Journal;
using Viscolog.Text;

namespace Viscolog.Store;

/// <summary>The records of other benches, as they were fetched last; beside the log, never in it.</summary>
/// <param name="place">The bench's own log.</param>
internal sealed class Mirrors(LogPlace place)
{
    private string Folder => Path.Combine(place.Folder, "shared");

    private string List => Path.Combine(Folder, "benches.txt");

    /// <summary>Where the record of a stream is.</summary>
    public LogPlace Of(BenchStream stream) => new(Path.Combine(Folder, stream.Text));

    /// <summary>The benches and when they were asked last; nothing where nothing was fetched, or where the list can't be read.</summary>
    public MirrorList Read()
    {
        try
        {
            return File.Exists(List) ? MirrorList.Parse(File.ReadAllLines(List)) : MirrorList.None;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return MirrorList.None;
        }
    }

    /// <summary>Keeps the list.</summary>
    /// <exception cref="IOException">It can't be written.</exception>
    public void Write(MirrorList list)
    {
        place.Disk.MakeFolder(Folder);
        WholeFile.Write(place.Disk, List, System.Text.Encoding.UTF8.GetBytes(list.Text()), replace: true, like: place.Journal);
    }

    /// <summary>Throws all of it away.</summary>
    /// <exception cref="IOException">It can't be deleted.</exception>
    public void Delete()
    {
        if (Directory.Exists(Folder))
        {
            Directory.Delete(Folder, recursive: true);
        }
    }

    /// <summary>
    /// What other benches have, each run once: of several copies of one, that of the bench to which it was handed last, else the longest.
    /// Benches whose record can't be read are left out.
    /// </summary>
    /// <param name="clock">The time.</param>
    /// <param name="find">What is sought in a bench's log.</param>
    /// <param name="isOurs">Runs that this bench has itself.</param>
    public ImmutableArray<SharedRun> Find(TimeProvider clock, Func<BenchLog, IEnumerable<LoggedRun>> find, Func<Guid, bool> isOurs)
    {
        // Each is a log of its own, and opening one takes a while.
        var found = Read().Benches.AsParallel().AsOrdered().SelectMany(b => In(b, clock, find)).ToList();
        return
        [
            .. found.Where(r => r.File.Id is { } id && !isOurs(id))
                // What a bench has now stands for what its log said in an earlier life.
                .GroupBy(r => (r.File.Id!.Value, r.Bench.Stream.Log), (_, same) => same.MaxBy(r => r.Bench.Stream.Life)!)
                .GroupBy(r => r.File.Id!.Value)
                .Select(g => g.OrderBy(r => r.HandedTo is not null).ThenByDescending(r => r.File.Rows.Length)
                    .ThenBy(r => r.Bench.Stream.Text, StringComparer.Ordinal).First()),
        ];
    }

    private List<SharedRun> In(SharedBench bench, TimeProvider clock, Func<BenchLog, IEnumerable<LoggedRun>> find)
    {
        if (!BenchLog.Open(Of(bench.Stream), LogUse.Read, clock, null).Is(out var log, out _))
        {
            return [];
        }

        using (log)
        {
            var oils = BenchKnowledge.Of(log).Oils;
            return [.. find(log).Select(r => new SharedRun(bench, r, oils))];
        }
    }
}

/// <summary>A run of another bench.</summary>
/// <param name="Bench">The bench.</param>
/// <param name="Run">The run as that bench has it.</param>
/// <param name="Oils">The bench's readings of certified oils.</param>
internal sealed record SharedRun(SharedBench Bench, LoggedRun Run, ImmutableArray<OilReading> Oils)
{
    /// <summary>Its number there.</summary>
    public int Number => Run.Number;

    public RunFile File => Run.File;

    /// <summary>The log to which that bench has handed it; null where it keeps it.</summary>
    public Guid? HandedTo => Run.HandedTo;
}

/// <summary>A bench whose record is shared.</summary>
/// <param name="Stream">Its record.</param>
/// <param name="Name">What it is called.</param>
internal sealed record SharedBench(BenchStream Stream, string Name);

/// <summary>The benches of which something was fetched.</summary>
/// <param name="Fetched">When that was; null before the first time.</param>
/// <param name="Benches">The benches.</param>
internal sealed record MirrorList(DateTimeOffset? Fetched, ImmutableArray<SharedBench> Benches)
{
    /// <summary>Nothing.</summary>
    public static readonly MirrorList None = new(null, []);

    /// <summary>What is wrong with records, a line each.</summary>
    public ImmutableArray<string> Faults { get; init; } = [];

    public static MirrorList Parse(IReadOnlyList<string> lines)
    {
        if (lines.Count == 0 || !FileTime.TryParse(lines[0], out var fetched))
        {
            return None;
        }

        var benches = ImmutableArray.CreateBuilder<SharedBench>();
        foreach (var line in lines.Skip(1))
        {
            var mark = line.IndexOf(' ', StringComparison.Ordinal);
            if (mark > 0 && BenchStream.Read(line[..mark]) is { } stream)
            {
                benches.Add(new(stream, line[(mark + 1)..]));
            }
        }

        return new(fetched, benches.ToImmutable());
    }

    public string Text()
        => string.Concat(
            Benches.Select(b => $"{b.Stream.Text} {OneLine.Of(b.Name)}\n").Prepend(JournalFile.Stamp(Fetched ?? default) + "\n"));
}
