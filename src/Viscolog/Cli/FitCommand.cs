using System.CommandLine;
using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
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

        var (path, file) = (named.Name, named.File);
        var band = target.Band(file, call);
        if (PairRoles.Apply(file.Run))
        {
            return Pair(call, named, band);
        }

        switch (Posteriors.OfCurve(file.Run, band, named.Earlier))
        {
            case PosteriorOutcome.Refused refused:
                return call.Refuse($"{path}: {refused.Reason}");
            case PosteriorOutcome.Found { Posterior: var posterior } when posterior.Evidence.ReadingCount == 0:
                return call.Refuse($"{path}: no reading to fit{(posterior.Evidence.Warnings is [var first, ..] ? $" ({first})" : "")}; log at least the base as it stands");
            case PosteriorOutcome.Found { Posterior: var posterior } when TooFar(posterior, call) is { } dose:
                return call.Refuse(FormattableString.Invariant($"--at: read {dose:0.###}, expected at most {Furthest * Top(posterior):0.###} %: beyond one and a half times the usual range there is no forecast"));
            case PosteriorOutcome.Found { Posterior: var posterior }:
                Answer(call, named, posterior, band);
                return ExitCode.Done;
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }

    private ExitCode Pair(Invocation call, NamedRun named, ViscosityBand? band)
    {
        if (PairStudy.Of(named, band, "fit", call) is not { Posterior: var posterior } study)
        {
            return ExitCode.InputRefused;
        }

        if ((call.Value(at) ?? []).Any(dose => dose > Furthest * posterior.Evidence.Roles.BodyThickener.UsualRange.Top.Percent))
        {
            return call.Refuse("--at: beyond one and a half times the usual range of the thickener that makes the body there is no forecast");
        }

        var report = new PairFitReport(posterior, PairFits.Of(posterior), [.. (call.Value(at) ?? []).Select(Dose.FromPercent)]);
        if (call.Json)
        {
            call.Print(report.ToAnswer(named.Warnings));
            return ExitCode.Done;
        }

        call.Warn(named.Warnings);
        PairFitText.Write(call.Terminal, report, PairPictures.Of(posterior, band, study.Advice, Advisor.Level));
        return ExitCode.Done;
    }

    private static double Top(Posterior posterior) => posterior.Evidence.Thickener.UsualRange.Top.Percent;

    private double? TooFar(Posterior posterior, Invocation call)
        => call.Value(at)?.Where(dose => dose > Furthest * Top(posterior)).Select(dose => (double?)dose).FirstOrDefault();

    private void Answer(Invocation call, NamedRun named, Posterior posterior, ViscosityBand? band)
    {
        var report = new FitReport(
            ShapeFits.Of(posterior),
            [.. (call.Value(at) ?? []).Select(p => (Dose.FromPercent(p), posterior.BodyAt(Dose.FromPercent(p), Advisor.Level)))],
            band,
            band is null ? null : posterior.DoseFor(band.Aim, Advisor.Level),
            TestDoses.Next(posterior));
        if (call.Json)
        {
            call.Print(report.ToAnswer(named.File.Run.Name, [.. named.Warnings, .. posterior.Evidence.Warnings]));
            return;
        }

        call.Warn(named.Warnings);
        FitText.Write(call.Terminal, posterior, report, RunPictures.Of(posterior, band, null, Advisor.Level));
    }
}
