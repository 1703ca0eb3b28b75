using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Store;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>Puts a backup back.</summary>
internal sealed class RestoreCommand : CalledCommand
{
    public const string Example = ImportCommand.Example + " && dotnet run --project src/Viscolog -- backup --to my-backups --keep 1 --log "
        + "my-log && dotnet run --project src/Viscolog -- restore my-backups/*.journal --log my-log";

    private readonly Argument<string?> _backup = new("BACKUP")
    {
        Description = "A backup, as 'backup' made it.",
        Arity = ArgumentArity.ZeroOrOne,
    };
    private readonly Option<bool> _fromCopy = FlagOption.Create(
        "--from-copy", "Instead of a backup: rebuild a damaged journal from the log's own query copy.");

    public RestoreCommand()
        : base("restore", "Put a backup in the log's place; what was there before is set aside, never deleted.", Example)
    {
        Take(_backup, _fromCopy);
        Validators.Add(result =>
        {
            if (result.GetValue(_fromCopy) == result.GetValue(_backup) is not null)
            {
                result.AddError("name a backup, or give --from-copy");
            }
        });
    }

    protected override ExitCode Run(Invocation call)
    {
        using var progress = call.Progress();
        var now = call.Clock.GetUtcNow();
        var outcome = call.Value(_fromCopy)
            ? LogBackups.RestoreFromCopy(call.Log, now, progress)
            : LogBackups.Restore(call.Log, call.Optional(_backup)!, now, progress);
        progress.Dispose();
        return outcome.Match(
            restored => call.Answer(
                () => new RestoreAnswer(restored.Lines, restored.Aside),
                terminal => terminal.Line($"restored {Count.Of(restored.Lines, "line", "lines")}"
                    + (restored.Aside is { } aside ? $"; what was there before is in {aside}" : "")),
                restored.Notes),
            call.LogFailed);
    }
}
