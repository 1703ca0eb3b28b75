using System.CommandLine;
using System.Text;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.MaterialFiles;
using Viscolog.OilFiles;
using Viscolog.Output;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Tables;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>Logged runs as run files.</summary>
internal sealed class ExportCommand : CalledCommand
{
    public const string Example = ImportCommand.Example + " && dotnet run --project src/Viscolog -- export --all -o my-runs --log my-log";

    private readonly Argument<string[]> _runs = new("RUN")
    {
        Description = "Numbers of logged runs, or their UUIDs.",
        Arity = ArgumentArity.ZeroOrMore,
    };
    private readonly Option<bool> _all = FlagOption.Create("--all", "Every run of the log, and its materials.");
    private readonly Option<bool> _materials = FlagOption.Create(
        "--materials", "The log's bases, thickeners, methods and specifications; with --all they are there too.");
    private readonly Option<bool> _oils = FlagOption.Create(
        "--oils", "The log's readings of certified oils; with --all they are there too.");
    private readonly Option<string> _output = OutputOptions.Named<string>(
        "PATH", "A file for one run or the materials, else a folder; one file without it goes to standard output.");
    private readonly Option<bool> _safe = FlagOption.Create("--spreadsheet-safe", "Put a mark before texts that a spreadsheet would take "
        + "for formulas. These files differ from the log; don't import them.");
    private readonly Option<bool> _xlsx =
        FlagOption.Create("--xlsx", "Write workbooks (.xlsx): the run in the first sheet, numbers as numbers and "
        + "texts as texts. The ending .xlsx of -o does the same for one file.");
    private readonly Option<bool> _force = FlagOption.Create("--force", "Overwrite existing files.");

    public ExportCommand()
        : base("export", "Write logged runs as run files, lossless, to keep, to look at, or to import elsewhere.", Example)
    {
        Take(_runs, _all, _materials, _oils, _output, _xlsx, _safe, _force);
        Validators.Add(result =>
        {
            var (named, everything) = (result.GetValue(_runs)?.Length ?? 0, result.GetValue(_all));
            if ((named > 0 ? 1 : 0) + (everything ? 1 : 0) + (result.GetValue(_materials) ? 1 : 0) + (result.GetValue(_oils) ? 1 : 0) != 1)
            {
                result.AddError("name runs, or give --all, --materials or --oils");
            }
            else if ((everything || named > 1) && result.GetValue(_output) is null)
            {
                result.AddError("name a folder with -o for more than one run");
            }
            else if (result.GetValue(_xlsx) && result.GetValue(_output) is null)
            {
                result.AddError("name a file or folder with -o: a workbook is not for standard output");
            }
            else if (result.GetValue(_xlsx) && result.GetValue(_safe))
            {
                result.AddError("--spreadsheet-safe is for CSV: in a workbook a text never is a formula");
            }
        });
    }

    protected override ExitCode Run(Invocation call)
    {
        using var stop = new StopSignal();
        return call.WithLog(LogUse.Read, log => Run(call, log, stop.Token));
    }

    private ExitCode Run(Invocation call, BenchLog log, CancellationToken stop)
    {
        var path = call.Value(_output);
        if (call.Value(_materials))
        {
            return Put(path, Materials(log, call), call);
        }

        if (call.Value(_oils))
        {
            return Put(path, Oils(log, call), call);
        }

        var names = call.Value(_all) ? [.. log.Runs().Select(r => FormattableString.Invariant($"{r.Number}"))] : call.Value(_runs);
        if (path is not null && (names.Length != 1 || call.Value(_all)))
        {
            return Folder(names, Path.GetFullPath(path), log, call, stop);
        }

        return RunSource.Stream(log, names[0]) is { } logged
            ? Put(path, RunOf(logged, call), call)
            : call.Refuse(RunSource.Unknown(names[0]));
    }

    private ExitCode Put(string? path, Part part, Invocation call)
    {
        if (path is null)
        {
            var text = new StringBuilder();
            using (var pieces = new TextPieces(call.Json ? t => text.Append(t) : call.Terminal.Text))
            {
                part.Write(pieces);
            }

            if (call.Json)
            {
                call.Print(new TextAnswer(text.ToString()));
            }

            return ExitCode.Done;
        }

        return Write(Path.GetFullPath(path), part, call) is { } refusal ? call.Refuse(refusal) : Answer(call, [path]);
    }

    private ExitCode Folder(string[] names, string folder, BenchLog log, Invocation call, CancellationToken stop)
    {
        if (NamedFile.FolderMade(folder) is { } obstacle)
        {
            return call.Refuse(obstacle.Reason);
        }

        using var progress = call.Progress();
        var written = new List<string>();
        foreach (var name in names)
        {
            progress.Report(new("exporting", written.Count, names.Length));
            if (stop.IsCancellationRequested)
            {
                call.Terminal.Fail($"stopped after {Count.Of(written.Count, "file", "files")}; each of them is whole");
                return ExitCode.Stopped;
            }

            if (RunSource.Stream(log, name) is not { } logged)
            {
                return call.Refuse(RunSource.Unknown(name));
            }

            var path = Path.Combine(folder, Named(RunFileName.Of(logged.Header), call));
            if (Write(path, RunOf(logged, call), call) is { } refusal)
            {
                return call.Refuse(refusal);
            }

            written.Add(path);
        }

        progress.Dispose();
        foreach (var part in call.Value(_all) ? Beside(log, call) : [])
        {
            var path = Path.Combine(folder, Named(part.Name + ".csv", call));
            if (Write(path, part, call) is { } refusal)
            {
                return call.Refuse(refusal);
            }

            written.Add(path);
        }

        return Answer(call, written);
    }

    private string Named(string csv, Invocation call) => call.Value(_xlsx) ? Path.ChangeExtension(csv, ".xlsx") : csv;

    private bool IsWorkbook(Invocation call)
        => call.Value(_xlsx) || call.Value(_output)?.EndsWith(".xlsx", StringComparison.OrdinalIgnoreCase) == true;

    private string? Write(string path, Part part, Invocation call)
    {
        if (NamedFile.Obstacle(path) is { } obstacle)
        {
            return obstacle.Reason;
        }

        try
        {
            if (!Content(part, call).Is(out var write, out var trouble))
            {
                return $"{TerminalText.Of(path)}: {trouble}";
            }

            var force = call.Value(_force);
            return (!force && Path.Exists(path) ? SaysTheSame(path, write) : WholeFile.Write(path, write, force))
                ? null
                : $"{path}: already exists with different content; choose another name, or overwrite it with --force";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return TerminalText.Of($"{path}: cannot be written: {e.Message}");
        }
    }

    private static bool SaysTheSame(string path, Action<Stream> write)
    {
        using var there = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var taker = new SameTaker(there);
        write(taker);
        return taker.IsSame;
    }

    /// <summary>The table as it is, written row by row, or as a workbook, which has to be in memory whole.</summary>
    private Outcome<Action<Stream>> Content(Part part, Invocation call)
    {
        if (!IsWorkbook(call))
        {
            return part.Write;
        }

        using var table = new MemoryStream();
        part.Write(table);
        return TableSheet.Workbook([TableSheet.Of(part.Name, table.ToArray(), part.IsText)]).Is(out var bytes, out var trouble)
            ? new Action<Stream>(stream => stream.Write(bytes))
            : new Refused(trouble);
    }

    /// <summary>What the log has beside its runs.</summary>
    private IEnumerable<Part> Beside(BenchLog log, Invocation call)
    {
        if (log.Materials().Count > 0)
        {
            yield return Materials(log, call);
        }

        if (log.Oils().Count > 0)
        {
            yield return Oils(log, call);
        }
    }

    private Part Oils(BenchLog log, Invocation call)
        => new("oils", stream => OilFileWriter.Write(log.Oils().Select(o => o.Row), stream, call.Value(_safe)), OilColumns.IsText);

    private Part Materials(BenchLog log, Invocation call)
        => new("materials", stream => MaterialFileWriter.Write(log.Materials(), stream, call.Value(_safe)), MaterialColumns.IsText);

    private Part RunOf(StreamedRun logged, Invocation call)
        => new(
            "run",
            stream => RunFileWriter.Write(logged.Header, logged.Rows.Select(r => r.Row), stream, call.Value(_safe)),
            RunSheet.IsText);

    private static ExitCode Answer(Invocation call, List<string> written) => call.Answer(
        () => new ExportAnswer(written),
        terminal => terminal.Line(written is [var only] ? $"written: {only}" : $"written: {Count.Of(written.Count, "file", "files")}"));

    /// <summary>What goes into one file.</summary>
    /// <param name="Name">What it is.</param>
    /// <param name="Write">Writes it as a table.</param>
    /// <param name="IsText">Whether a column holds text.</param>
    private sealed record Part(string Name, Action<Stream> Write, Func<string, bool> IsText);
}
