using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Wording;

namespace Viscolog.Cli.Entries;

/// <summary>Begins a run without a screen.</summary>
internal sealed class NewCommand : CalledCommand
{
    public const string Example =
        "dotnet run --project src/Viscolog -- new base_g=120 base=Ledge thickener=Sail target_mpas=9000 --log my-new-log";

    private readonly Argument<string[]> _words = new("KEY=VALUE")
    {
        Description = "What the header of a run file says, such as name=\"Lantern gel 09\" base_g=120 \"thickener=Sail; range_pct=1-5\".",
        Arity = ArgumentArity.OneOrMore,
    };

    public NewCommand()
        : base("new", "Begin a run in the log, without a screen.", Example)
        => Take(_words);

    protected override ExitCode Run(Invocation call)
    {
        var lines = call.Value(_words).Select(w => w.Split('=', 2)).ToList();
        if (lines.Find(l => l is not [{ Length: > 0 }, _]) is { } odd)
        {
            return call.Wrong($"read '{odd[0]}', expected key=value, such as base_g=120");
        }

        var (file, refusal, _) = HeaderText.TryRead(lines.Select(l => $"{l[0].Trim()}: {l[1].Trim()}"));
        return file is null ? call.Refuse(refusal!) : call.WithLog(LogUse.Write, log =>
        {
            var (outcome, run) = log.Begin(file);
            return outcome is WriteOutcome.Saved
                ? call.Answer(
                    () => new LoggedAnswer(run, log.Run(run)?.File.Id, null),
                    terminal => terminal.Line(FormattableString.Invariant($"run {run} begun: {RunTitle.Of(file.Run)}")))
                : call.LogFailed(outcome.Trouble!);
        });
    }
}
