using System.CommandLine;
using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.MaterialFiles;
using Viscolog.OilFiles;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Tables;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>Brings run files into the log.</summary>
internal sealed class ImportCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- import sample-runs/lantern-gel-06.csv --log my-log";

    /// <summary>Bytes at a file's beginning in which the line stands that tells its kind.</summary>
    private const int HeadLength = 256;

    private readonly Argument<string[]> _files = new("FILE")
    {
        Description = "Run files, materials files or oils files, or folders of them.",
        Arity = ArgumentArity.OneOrMore,
    };

    public ImportCommand()
        : base("import", "Bring run files, materials files and oils files into the log: each whole or not at all, nothing twice.", Example)
        => Take(_files);

    protected override ExitCode Run(Invocation call)
    {
        using var stop = new StopSignal();
        var code = call.WithLog(LogUse.Write, log => Run(call, log, stop.Token), LogPatience.Long(stop.Token));
        return code == ExitCode.LogUnusable && stop.Token.IsCancellationRequested ? ExitCode.Stopped : code;
    }

    private ExitCode Run(Invocation call, BenchLog log, CancellationToken stop)
    {
        using var progress = call.Progress();
        var paths = call.Value(_files).SelectMany(p => RunSource.Inside(p, call)).ToList();
        var (answer, code) = (new ImportAnswer(), ExitCode.Done);
        foreach (var (i, path) in paths.Index())
        {
            progress.Report(new("importing", i, paths.Count));
            var (added, end) = Import(path, log, call, stop);
            answer = answer.With(added);
            code = end == ExitCode.Done ? code : end;
            if (end is ExitCode.LogUnusable or ExitCode.Stopped)
            {
                break;
            }
        }

        progress.Dispose();
        call.Answer(() => answer with { Errors = Errors(call) }, terminal => terminal.Line(Words(answer)));
        return code;
    }

    private static List<FileError>? Errors(Invocation call) => call.Terminal.Failures is { Count: > 0 } failures
        ? [.. failures.Select(f => new FileError(f.Error, f.Hint, f.File, f.Line, f.Column))] : null;

    private static (ImportAnswer Added, ExitCode Code) Import(string path, BenchLog log, Invocation call, CancellationToken stop)
    {
        try
        {
            stop.ThrowIfCancellationRequested();
            // Once: a pipe gives its bytes to one reader.
            var (bytes, refusal) = InputFile.Read(path, "a run file", stop);
            if (refusal is not null)
            {
                call.Terminal.Fail(Failure.Of(refusal));
                return (new(), ExitCode.InputRefused);
            }

            path = InputFile.NameOf(path);
            var head = TableText.HeadOf(bytes, HeadLength);
            return MaterialFileReader.Key.Begins(head) ? ImportMaterials(path, bytes, log, call)
                : OilFileReader.Key.Begins(head) ? ImportOils(path, bytes, log, call)
                : ImportRun(path, bytes, log, call, stop);
        }
        catch (OperationCanceledException)
        {
            call.Terminal.Fail($"stopped before {path}; what was imported before it is in the log");
            return (new(), ExitCode.Stopped);
        }
    }

    private static (ImportAnswer Added, ExitCode Code) ImportRun(
        string path, ReadOnlyMemory<byte> bytes, BenchLog log, Invocation call, CancellationToken stop)
    {
        if (RunSource.Taken(RunFileReader.ParsePacked(path, bytes), call) is not { } file)
        {
            return (new(), ExitCode.InputRefused);
        }

        call.Warn(file.Header.Warnings);
        try
        {
            var (outcome, plan) = log.Import(file, stop);
            return outcome is WriteOutcome.Saved && plan is not null
                ? (new() { Files = 1, Runs = plan.IsNew ? 1 : 0, Entries = plan.Added, Voided = plan.Voided, Already = plan.Already },
                    ExitCode.Done)
                : Failed(path, outcome, call);
        }
        catch (OperationCanceledException)
        {
            call.Terminal.Fail($"stopped; nothing of {path} is in the log, what was imported before it is");
            return (new(), ExitCode.Stopped);
        }
    }

    private static (ImportAnswer Added, ExitCode Code) ImportOils(string path, ReadOnlyMemory<byte> bytes, BenchLog log, Invocation call)
    {
        switch (OilFileReader.Parse(path, bytes))
        {
            case TableOutcome<OilFile>.Refused refused:
                call.Terminal.Fail(Failure.Of(refused.Refusal));
                return (new(), ExitCode.InputRefused);
            case TableOutcome<OilFile>.Read { File: var file }:
                call.Warn(file.Warnings);
                var (outcome, merge) = log.AddOils(file.Rows);
                return outcome is WriteOutcome.Saved
                    ? (new() { Files = 1, Oils = merge.Added, Voided = merge.Voided, Already = merge.Already }, ExitCode.Done)
                    : Failed(path, outcome, call);
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }

    private static (ImportAnswer Added, ExitCode Code) Failed(string path, WriteOutcome outcome, Invocation call)
    {
        call.Terminal.Fail(Failure.Of($"{path}: {outcome.Trouble}") with { File = path });
        return (new(), outcome is WriteOutcome.Contradicted ? ExitCode.InputRefused : ExitCode.LogUnusable);
    }

    private static (ImportAnswer Added, ExitCode Code) ImportMaterials(
        string path, ReadOnlyMemory<byte> bytes, BenchLog log, Invocation call)
    {
        switch (MaterialFileReader.Parse(path, bytes))
        {
            case TableOutcome<MaterialFile>.Refused refused:
                call.Terminal.Fail(Failure.Of(refused.Refusal));
                return (new(), ExitCode.InputRefused);
            case TableOutcome<MaterialFile>.Read { File: var file }:
                call.Warn(file.Warnings);
                var (outcome, stated) = log.State(file.Rows);
                if (outcome is WriteOutcome.Saved)
                {
                    return (new() { Files = 1, Materials = stated, Already = file.Rows.Length - stated }, ExitCode.Done);
                }

                return Failed(path, outcome, call);
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }

    private static string Words(ImportAnswer answer)
    {
        var materials = answer.Materials > 0 ? $", {Count.Of(answer.Materials, "material", "materials")} new or changed" : "";
        var oils = answer.Oils > 0 ? $", {Count.Of(answer.Oils, "oil reading", "oil readings")} new" : "";
        var voided = answer.Voided > 0 ? FormattableString.Invariant($", {Count.Of(answer.Voided, "entry", "entries")} voided") : "";
        return $"{Count.Of(answer.Files, "file", "files")}: {Count.Of(answer.Runs, "new run", "new runs")}, "
            + $"{Count.Of(answer.Entries, "new entry", "new entries")}{voided}{materials}{oils}; "
            + $"{answer.Already.ToString(CultureInfo.InvariantCulture)} already there";
    }
}
