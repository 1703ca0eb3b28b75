using System.CommandLine;
using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Store;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>A backup of the log.</summary>
internal sealed class BackupCommand : CalledCommand
{
    public const string Example = ImportCommand.Example
        + " && dotnet run --project src/Viscolog -- backup --to my-backups --keep 10 --log my-log";

    private readonly Option<string?> _to = TextOption.Create(
        "--to", "FOLDER", "Where to; default: backups in the log's folder. Another disk is better.");
    private readonly Option<int> _keep = new("--keep")
    {
        HelpName = "N",
        Description = "Backups to keep there, the latest; default 10.",
        DefaultValueFactory = _ => 10,
    };

    public BackupCommand()
        : base("backup", "Copy the log's journal, check the copy, and keep the latest copies.", Example)
    {
        Take(_to, _keep);
        _keep.Validators.Add(result =>
        {
            if (result.Tokens is [var token]
                && !(int.TryParse(token.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n >= 1))
            {
                result.AddError($"--keep: read '{token.Value}', expected 1 or more");
            }
        });
    }

    protected override ExitCode Run(Invocation call) => call.WithLog(LogUse.Read, log =>
    {
        using var progress = call.Progress();
        var folder = Path.GetFullPath(call.Value(_to) ?? log.Place.Backups);
        var outcome = LogBackups.Make(log, folder, call.Value(_keep), call.Clock.GetUtcNow(), progress);
        progress.Dispose();
        return outcome.Match(
            made => call.Answer(
                () => new BackupAnswer(made.Path, made.Lines, made.Deleted),
                terminal => terminal.Line($"{made.Path}: {Count.Of(made.Lines, "line", "lines")}, read through"
                    + (made.Deleted > 0 ? $"; {Count.Of(made.Deleted, "older backup", "older backups")} deleted" : ""))),
            call.LogFailed);
    });
}
