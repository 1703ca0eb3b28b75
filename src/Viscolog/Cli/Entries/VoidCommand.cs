using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Copy;

namespace Viscolog.Cli.Entries;

/// <summary>Makes a row void without a screen.</summary>
internal sealed class VoidCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- import sample-runs/lantern-gel-06.csv --log my-log"
        + " && dotnet run --project src/Viscolog -- void 1 5 --reason typo --log my-log";

    private readonly Argument<string> _run = new("RUN") { Description = "The number of a logged run, or its UUID." };
    private readonly Argument<int> _row = new("ROW") { Description = "The number of the row, as 'show' lists it." };
    private readonly Option<string?> _reason = TextOption.Create("--reason", "TEXT", "Why it counts no more.");

    public VoidCommand()
        : base("void", "Make a row of a logged run void: it no longer counts, but stays, with the reason.", Example)
    {
        _reason.Required = true;
        Take(_run, _row, _reason);
    }

    protected override ExitCode Run(Invocation call) => string.IsNullOrWhiteSpace(call.Value(_reason))
        ? call.Wrong("give --reason TEXT: a void row says why")
        : call.WithLog(LogUse.Write, log => RunSource.Find(log, call.Value(_run)) is { } logged
            ? Void(log, logged, call)
            : call.Refuse(RunSource.Unknown(call.Value(_run))));

    private ExitCode Void(BenchLog log, LoggedRun logged, Invocation call)
    {
        var (row, reason) = (call.Value(_row), call.Value(_reason)!.Trim());
        var place = logged.Rows.IndexOf(row);
        if (place < 0)
        {
            return call.Refuse(
                FormattableString.Invariant($"run {logged.Number} has no row {row}; 'viscolog show {logged.Number}' lists its rows"));
        }

        List<FileRow> rows = [.. logged.File.Contents()];
        if (rows[place].Void is { } earlier)
        {
            return call.Refuse(FormattableString.Invariant($"row {row} is void already: {earlier}"));
        }

        rows[place] = rows[place] with { Void = reason };
        if (RowAppender.Fault(logged.File.Run, rows) is { } fault)
        {
            return call.Refuse($"without that row the run makes no sense: {fault}");
        }

        var outcome = log.Void(logged.Number, row, reason);
        return outcome is WriteOutcome.Saved
            ? call.Answer(
                () => new LoggedAnswer(logged.Number, logged.File.Id, row),
                terminal => terminal.Line(FormattableString.Invariant($"run {logged.Number}, row {row}: void; it stays in sight")))
            : call.LogFailed(outcome.Trouble!);
    }
}
