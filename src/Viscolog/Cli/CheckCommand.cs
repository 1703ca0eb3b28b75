using System.CommandLine;
using Viscolog.Cli.Json;
using Viscolog.Core.Checking;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Store;

namespace Viscolog.Cli;

/// <summary>A batch against its specification.</summary>
internal sealed class CheckCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- check sample-runs/checks/lantern-gel-21.csv --low 7650 --high 10350";

    private readonly Argument<string> run = new("RUN") { Description = RunSource.Description };
    private readonly Option<double?> low = NumberOption.Create("--low", "MPAS", "The least body wanted, in mPa·s.", 1e-3, 1e12);
    private readonly Option<double?> high = NumberOption.Create("--high", "MPAS", "The greatest body wanted, in mPa·s.", 1e-3, 1e12);
    private readonly Option<string?> spec = new("--spec") { HelpName = "NAME", Description = "A specification of the log. Without it and without --low and --high: that of the run's product, else the run's own target." };
    private readonly Option<string[]> history = new("--history") { HelpName = "PATH", Description = "Earlier runs in place of the log's: a run file, or a folder of them; may be given more than once.", Arity = ArgumentArity.OneOrMore };

    public Command Create(CommonOptions common, CallOutput terminal)
    {
        var command = new Command("check", "Check a batch: value with uncertainty, verdict, what to do. Ends with 3 where the verdict is reject.");
        command.Add(run);
        command.Add(low);
        command.Add(high);
        command.Add(spec);
        command.Add(history);
        common.AddTo(command);
        command.SetAction(parsed => (int)Run(new(parsed, common, terminal)));
        return command;
    }

    private ExitCode Run(Invocation call)
    {
        if (Conflict(call) is { } conflict)
        {
            return call.Wrong(conflict);
        }

        if (RunSource.Read(call.Value(run), call.Value(history) is { Length: > 0 } paths ? paths : null, call, out var code) is not { } named)
        {
            return code;
        }

        if (call.Value(spec) is not null && ReferenceEquals(named.Bench, BenchKnowledge.None))
        {
            using var log = call.OpenLog(LogUse.Read);
            if (log is null)
            {
                return ExitCode.LogUnusable;
            }

            named = named with { Bench = BenchKnowledge.Of(log) };
        }

        if (Specified(named, call) is not { } specification)
        {
            return call.Refuse(call.Value(spec) is { } asked
                ? named.Bench.UnknownSpecification(asked)
                : $"{named.Name}: nothing to check against; give --low and --high, --spec NAME, or a target in the run");
        }

        var today = DateOnly.FromDateTime(call.Clock.GetLocalNow().Date);
        switch (BatchChecks.Of(named.Bench.Request(named.File.Run, specification, named.Earlier, today)))
        {
            case CheckOutcome.Refused refused:
                return call.Refuse($"{named.Name}: {refused.Reason}");
            case CheckOutcome.Checked { Check: var check }:
                if (call.Json)
                {
                    call.Print(CheckAnswer.Of(check, today, named.Warnings));
                }
                else
                {
                    call.Warn(named.Warnings);
                    CheckText.Write(call.Terminal, check, today);
                }

                return check.Verdict is Verdict.Reject ? ExitCode.Rejected : ExitCode.Done;
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }

    private string? Conflict(Invocation call)
    {
        var (least, most) = (call.Value(low), call.Value(high));
        return least is null != most is null ? "give both --low and --high"
            : least >= most ? "--low must be below --high"
            : least is not null && call.Value(spec) is not null ? "give --spec, or --low and --high, not both"
            : null;
    }

    /// <summary>What is asked of the batch; null where nothing is.</summary>
    private Specification? Specified(NamedRun named, Invocation call)
    {
        var own = named.File.Run;
        if (call.Value(low) is { } least && call.Value(high) is { } most)
        {
            var ends = new Target.Ends(Viscosity.FromMilliPascalSeconds(least), Viscosity.FromMilliPascalSeconds(most));
            return new("limits of this call") { Body = ends, ReferenceTemperature = own.ReferenceTemperature };
        }

        if (call.Value(spec) is { } asked)
        {
            return named.Bench.Specification(asked);
        }

        return (own.Product is { } product ? named.Bench.Specification(product) : null)
            ?? (own.Target is { } target ? new Specification("target of the run") { Body = target, ReferenceTemperature = own.ReferenceTemperature } : null);
    }
}
