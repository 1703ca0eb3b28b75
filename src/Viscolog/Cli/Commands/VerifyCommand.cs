using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>The full check of the log.</summary>
internal sealed class VerifyCommand : CalledCommand
{
    public const string Example = ImportCommand.Example + " && dotnet run --project src/Viscolog -- verify --log my-log";

    private readonly Option<string?> _salvage = TextOption.Create(
        "--salvage", "NEWLOG", "Copy what is sound in a damaged log into a new log; the damaged one is left unchanged.");

    public VerifyCommand()
        : base("verify", "Check every byte of the log, and its query copy against the journal; repair the copy if it differs.", Example)
        => Take(_salvage);

    protected override ExitCode Run(Invocation call)
    {
        if (call.Log.IsSurelyAbsent && !Path.Exists(call.Log.Copy))
        {
            return call.LogFailed($"there is no log in {call.Log.Folder}; 'viscolog import FILE' starts one, --log names another folder");
        }

        if (call.Value(_salvage) is { } folder)
        {
            return Salvage(call, new(Path.GetFullPath(folder)));
        }

        return call.WithLog(LogUse.Write, log =>
        {
            using var progress = call.Progress();
            try
            {
                var check = LogCheck.Of(log, progress);
                progress.Dispose();
                return Answer(call, check, log.Notes);
            }
            catch (InvalidDataException e)
            {
                return call.LogFailed($"{log.Place.Journal} can't be understood: {e.Message}");
            }
        });
    }

    private static ExitCode Salvage(Invocation call, LogPlace to)
    {
        using var progress = call.Progress();
        var outcome = LogSalvage.Write(call.Log, to, call.Clock.GetUtcNow(), progress);
        progress.Dispose();
        return outcome.Match(
            salvaged => call.Answer(
                () => new SalvageAnswer(to.Folder, salvaged.Lines, salvaged.Entries, salvaged.Losses),
                terminal => terminal.Line($"{to.Folder}: {Count.Of(salvaged.Entries, "sound entry", "sound entries")} in a log of "
                    + $"{Count.Of(salvaged.Lines, "line", "lines")}; {call.Log.Folder} stays as it is"),
                salvaged.Losses),
            call.LogFailed);
    }

    private static ExitCode Answer(Invocation call, LogCheck check, IEnumerable<string> notes)
    {
        var mended = check.Difference is { } difference ? $"{difference}; it was rebuilt" : null;
        return call.Answer(
            () => new VerifyAnswer(
                check.Lines, check.Runs, check.Entries, [.. notes, .. mended is null ? Array.Empty<string>() : [mended]])
            { LeftOut = check.LeftOut.Count > 0 ? check.LeftOut : null },
            terminal =>
            {
                terminal.Line($"journal: {Count.Of(check.Lines, "line", "lines")}, every checksum holds: "
                    + $"{Count.Of(check.Runs, "run", "runs")}, {Count.Of(check.Entries, "entry", "entries")}");
                terminal.Line("query copy: " + (mended ?? "the same as the journal, every document"));
            },
            check.LeftOut);
    }
}
