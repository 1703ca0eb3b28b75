using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Store;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>The full check of the log.</summary>
internal static class VerifyCommand
{
    public const string Example = ImportCommand.Example + " && dotnet run --project src/Viscolog -- verify --log my-log";

    public static Command Create(CommonOptions common, CallOutput terminal)
    {
        var command = new Command("verify", "Check every byte of the log, and its query copy against the journal; mend the copy where it differs.");
        common.AddTo(command);
        command.SetAction(parsed => (int)Run(new(parsed, common, terminal)));
        return command;
    }

    private static ExitCode Run(Invocation call)
    {
        if (!File.Exists(call.Log.Journal) && !Path.Exists(call.Log.Copy))
        {
            return call.LogFailed($"there is no log in {call.Log.Folder}; 'viscolog import FILE' starts one, --log names another folder");
        }

        using var log = call.OpenLog(LogUse.Write);
        if (log is null)
        {
            return ExitCode.LogUnusable;
        }

        using var progress = call.Progress();
        try
        {
            var check = LogCheck.Of(log, progress);
            progress.Dispose();
            string[] mended = check.Difference is null ? [.. log.Notes] : [.. log.Notes, check.Difference + "; it was made anew"];
            if (call.Json)
            {
                call.Print(new VerifyAnswer(check.Lines, check.Runs, check.Entries, mended));
                return ExitCode.Done;
            }

            call.Terminal.Line($"journal: {Count.Of(check.Lines, "line", "lines")}, every checksum holds: {Count.Of(check.Runs, "run", "runs")}, {Count.Of(check.Entries, "entry", "entries")}");
            call.Terminal.Line(check.Difference is { } difference ? $"query copy: {difference}; it was made anew" : "query copy: the same as the journal, every document");
            return ExitCode.Done;
        }
        catch (InvalidDataException e)
        {
            return call.LogFailed($"{log.Place.Journal} can't be understood: {e.Message}");
        }
    }
}
