using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Copy;

namespace Viscolog.Cli.Entries;

/// <summary>Adds a row to a run without a screen.</summary>
internal sealed class AddCommand : CalledCommand
{
    public const string Example = NewCommand.Example
        + " && dotnet run --project src/Viscolog -- add 1 added_g=0.6 stir_s=10 wait_s=30 viscosity_mpas=1420 --log my-new-log";

    private readonly Argument<string> _run = new("RUN") { Description = "The number of a logged run, or its UUID." };
    private readonly Argument<string[]> _words = new("COLUMN=VALUE")
    {
        Description = "What a row of a run file says, with decimal points, such as added_g=0.6 wait_s=30 viscosity_mpas=1420 note=smooth. "
            + "The time is now, unless time= says another.",
        Arity = ArgumentArity.OneOrMore,
    };

    public AddCommand()
        : base("add", "Log an addition, a reading or a note at the end of a run, without a screen.", Example)
        => Take(_run, _words);

    protected override ExitCode Run(Invocation call)
        => call.WithLog(LogUse.Write, log => RunSource.Find(log, call.Value(_run)) is { } logged
        ? Add(log, logged, call)
        : call.Refuse(RunSource.Unknown(call.Value(_run))));

    private ExitCode Add(BenchLog log, LoggedRun logged, Invocation call)
    {
        var (row, trouble) = RowWords.Read(logged.File.Run, call.Value(_words));
        if (row is null)
        {
            return call.Refuse(trouble!);
        }

        row = row with { Time = row.Time ?? call.Clock.GetLocalNow() };
        if (RowAppender.Fault(logged.File.Run, logged.File.Contents().Append(row)) is { } fault)
        {
            return call.Refuse(fault);
        }

        var number = logged.Rows.Length + 1;
        var outcome = log.Add(logged.Number, row);
        return outcome is WriteOutcome.Saved
            ? call.Answer(
                () => new LoggedAnswer(logged.Number, logged.File.Id, number),
                terminal
                    => terminal.Line(
                        FormattableString.Invariant(
                            $"run {logged.Number}, row {number}: logged; 'viscolog advise {logged.Number}' says what comes next")))
            : call.LogFailed(outcome.Trouble!);
    }
}
