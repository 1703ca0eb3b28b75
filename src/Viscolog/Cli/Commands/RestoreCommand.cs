using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Store;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>Puts a backup back.</summary>
internal sealed class RestoreCommand
{
    public const string Example = ImportCommand.Example + " && dotnet run --project src/Viscolog -- backup --to my-backups --keep 1 --log my-log && dotnet run --project src/Viscolog -- restore my-backups/*.journal --log my-log";

    private readonly Argument<string?> backup = new("BACKUP") { Description = "A backup, as 'backup' made it.", Arity = ArgumentArity.ZeroOrOne };
    private readonly Option<bool> fromCopy = new("--from-copy") { Description = "Instead of a backup: write a damaged journal again from the log's own query copy." };

    public Command Create(CommonOptions common, CallOutput terminal)
    {
        var command = new Command("restore", "Put a backup in the log's place; what was there before is set aside, never deleted.");
        command.Add(backup);
        command.Add(fromCopy);
        command.Validators.Add(result =>
        {
            if (result.GetValue(fromCopy) == result.GetValue(backup) is not null)
            {
                result.AddError("name a backup, or give --from-copy");
            }
        });
        common.AddTo(command);
        command.SetAction(parsed => (int)Run(new(parsed, common, terminal)));
        return command;
    }

    private ExitCode Run(Invocation call)
    {
        using var progress = call.Progress();
        var now = call.Clock.GetUtcNow();
        switch (call.Value(fromCopy) ? LogBackups.RestoreFromCopy(call.Log, now, progress) : LogBackups.Restore(call.Log, call.Optional(backup)!, now, progress))
        {
            case BackupOutcome.Restored restored when call.Json:
                call.Print(new RestoreAnswer(restored.Lines, restored.Aside));
                return ExitCode.Done;
            case BackupOutcome.Restored restored:
                progress.Dispose();
                call.Terminal.Line($"restored {Count.Of(restored.Lines, "line", "lines")}{(restored.Aside is { } aside ? $"; what was there before is in {aside}" : "")}");
                return ExitCode.Done;
            case BackupOutcome.Failed failed:
                return call.LogFailed(failed.Reason);
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }
}
