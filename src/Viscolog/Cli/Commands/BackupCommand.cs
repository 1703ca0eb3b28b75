using System.CommandLine;
using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Store;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>A backup of the log.</summary>
internal sealed class BackupCommand
{
    public const string Example = ImportCommand.Example + " && dotnet run --project src/Viscolog -- backup --to my-backups --keep 10 --log my-log";

    private readonly Option<string> to = new("--to") { HelpName = "FOLDER", Description = "Where to; default: backups in the log's folder. Another disk is better." };
    private readonly Option<int> keep = new("--keep") { HelpName = "N", Description = "Backups to keep there, the latest; default 10.", DefaultValueFactory = _ => 10 };

    public Command Create(CommonOptions common, CallOutput terminal)
    {
        keep.Validators.Add(result =>
        {
            if (result.Tokens is [var token] && !(int.TryParse(token.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n >= 1))
            {
                result.AddError($"--keep: read '{token.Value}', expected 1 or more");
            }
        });
        var command = new Command("backup", "Copy the log's journal, read the copy through, and keep the latest copies.");
        command.Add(to);
        command.Add(keep);
        common.AddTo(command);
        command.SetAction(parsed => (int)Run(new(parsed, common, terminal)));
        return command;
    }

    private ExitCode Run(Invocation call)
    {
        using var log = call.OpenLog(LogUse.Read);
        if (log is null)
        {
            return ExitCode.LogUnusable;
        }

        using var progress = call.Progress();
        var folder = Path.GetFullPath(call.Value(to) ?? log.Place.Backups);
        switch (LogBackups.Make(log, folder, call.Value(keep), call.Clock.GetUtcNow(), progress))
        {
            case BackupOutcome.Made made when call.Json:
                call.Print(new BackupAnswer(made.Path, made.Lines, made.Deleted));
                return ExitCode.Done;
            case BackupOutcome.Made made:
                progress.Dispose();
                call.Terminal.Line($"{made.Path}: {Count.Of(made.Lines, "line", "lines")}, read through{(made.Deleted > 0 ? $"; {Count.Of(made.Deleted, "older backup", "older backups")} deleted" : "")}");
                return ExitCode.Done;
            case BackupOutcome.Failed failed:
                return call.LogFailed(failed.Reason);
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }
}
