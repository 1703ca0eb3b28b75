using System.CommandLine;
using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;

namespace Viscolog.Cli;

/// <summary>The dose–response curve of a run.</summary>
internal sealed class FitCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- fit sample-runs/lantern-gel-07.csv --at 2.5";

    /// <summary>Doses are forecast up to so many times the top of the usual range.</summary>
    private const double Furthest = 1.5;

    private readonly Argument<string> run = new("RUN") { Description = RunSource.Description };
    private readonly TargetOptions target = new();
    private readonly Option<double[]> at = NumberOption.CreateRepeatable("--at", "PCT", "Ask for the body at a dose, in g per 100 g of base; may be given more than once.", 0, 1000);

    public Command Create(CommonOptions common, CallOutput terminal)
    {
        var command = new Command("fit", "Fit the dose–response curve: shapes, weights, parameters, a chart, and bodies at doses.");
        command.Add(run);
        target.AddTo(command);
        command.Add(at);
        common.AddTo(command);
        command.SetAction(parsed => (int)Run(new(parsed, common, terminal)));
        return command;
    }

    private ExitCode Run(Invocation call)
    {
        if (RunSource.Read(call.Value(run), null, call, out var code) is not { } named)
        {
            return code;
        }

        switch (Study.Of(new(named.File.Run) { Band = target.Band(named.File, call), History = named.Earlier }))
        {
            case StudyOutcome.Refused refused:
                return call.Refuse($"{named.Name}: {refused.Reason}");
            case StudyOutcome.Made { Study: { IsRead: false, Evidence.Warnings: var warnings } }:
                return call.Refuse($"{named.Name}: no reading to fit{(warnings is [var first, ..] ? $" ({first})" : "")}; log at least the base as it stands");
            case StudyOutcome.Made { Study: var study } when TooFar(study, call) is { } dose:
                return call.Refuse(FormattableString.Invariant(
                    $"--at: read {dose:0.###}, expected at most {Furthest * Top(study):0.###} %: beyond one and a half times the usual range there is no forecast"));
            case StudyOutcome.Made { Study: var study }:
                Answer(call, named, new(study, [.. (call.Value(at) ?? []).Select(Dose.FromPercent)]));
                return ExitCode.Done;
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }

    private static double Top(Study study) => study.Evidence.Thickener.UsualRange.Top.Percent;

    private double? TooFar(Study study, Invocation call)
        => call.Value(at)?.Where(dose => dose > Furthest * Top(study)).Select(dose => (double?)dose).FirstOrDefault();

    private static void Answer(Invocation call, NamedRun named, FitReport report)
    {
        if (call.Json)
        {
            call.Print(report.ToAnswer(named.Warnings));
            return;
        }

        call.Warn(named.Warnings);
        FitText.Write(call.Terminal, report);
    }
}
