using System.Collections.Immutable;
using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Advising;
using Viscolog.Core.Fitting;
using Viscolog.Core.Inference;
using Viscolog.Core.Quantities;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>The dose–response curve of a run.</summary>
internal sealed class FitCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- fit sample-runs/lantern-gel-07.csv --at 2.5";

    private readonly Argument<string> _run = RunSource.Argument();
    private readonly TargetOptions _target = new();
    private readonly Option<string[]> _history = RunSource.History();
    private readonly Option<double[]> _at = NumberOption.CreateRepeatable(
        "--at", "PCT", "Ask for the body at a dose, in g per 100 g of base; may be given more than once.", new("%", 0, 1000));

    public FitCommand()
        : base("fit", "Fit the dose–response curve: shapes, weights, parameters, a chart, and bodies at doses.", Example)
        => Take([_run, .. _target.All, _history, _at]);

    protected override ExitCode Run(Invocation call)
    {
        if (RunSource.Read(call.Value(_run), call.Value(_history), call, out var code, _target) is not { } named)
        {
            return code;
        }

        switch (Study.Of(new(named.File.Run) { Band = _target.Band(named.File, call), History = named.Earlier }))
        {
            case StudyOutcome.Refused refused:
                return call.Refuse($"{named.Name}: {EvidenceWords.Of(refused.Reason)}");
            case StudyOutcome.Made { Study: { IsRead: false, Evidence.Warnings: var warnings } }:
                return call.Refuse($"{named.Name}: no reading to fit{(warnings is [var first, ..] ? $" ({EvidenceWords.Of(first)})" : "")}"
                    + "; log at least the base as it stands");
            case StudyOutcome.Made { Study: var study } when TooFar(study, call) is { } dose:
                var most = Posterior.ForecastUpTo * Top(study);
                return call.Refuse(FormattableString.Invariant($"--at: read {dose:0.###}, expected at most {most:0.###} %: ")
                    + "beyond one and a half times the usual range there is no forecast");
            case StudyOutcome.Made { Study: var study }:
                var report = new FitReport(study, [.. (call.Value(_at) ?? []).Select(Dose.FromPercent)]);
                return call.Answer(() => report.ToAnswer(named.Warnings), terminal => FitText.Write(terminal, report), named.Warnings);
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }

    private static double Top(Study study) => study.Evidence.Thickener.UsualRange.Top.Percent;

    private double? TooFar(Study study, Invocation call)
        => call.Value(_at)?.Where(dose => dose > Posterior.ForecastUpTo * Top(study)).Select(dose => (double?)dose).FirstOrDefault();
}

/// <summary>What <c>fit</c> answers; doses asked for are of the thickener that makes the body, another one stays where it is.</summary>
/// <param name="Study">The run.</param>
/// <param name="At">The doses asked for.</param>
internal sealed record FitReport(Study Study, ImmutableArray<Dose> At)
{
    public RunFit Fit => Study.Fit;

    public Estimate Body(Dose dose) => Study.Posterior.BodyAt(Study.DosesAt(dose), Study.Level);

    /// <summary>The string at a dose asked for; null with one thickener.</summary>
    public LengthEstimate? Strings(Dose dose) => Study.StringAt(Study.DosesAt(dose));

    public FitAnswer ToAnswer(IReadOnlyList<string> warnings) => new()
    {
        Run = Study.Run.Name,
        Shapes = [.. Fit.Shapes.Select(Shape)],
        At = [.. At.Select(d => (Dose: d, Body: Body(d))).Select(a => new DosedBodyAnswer(
            a.Dose.Percent,
            Rounded.Four(a.Body.Median.MilliPascalSeconds),
            Rounded.Four(a.Body.Low.MilliPascalSeconds),
            Rounded.Four(a.Body.High.MilliPascalSeconds)))],
        DoseForTarget = Study.DoseForTarget is { } dose
            ? new(
                Rounded.Four(dose.Median.Percent), Rounded.Four(dose.Low.Percent),
                dose.High is { } high ? Rounded.Four(high.Percent) : null)
            : null,
        TestNext = Fit.TestNext is { } next
            ? new(Rounded.Four(next.Dose.Percent), BodyAnswer.Of(next.Expected), Math.Round(next.Gain.Percent, 1), ReasonWords.Of(next))
            : null,
        Pair = Study.Evidence.StringThickener is { } other ? new(
            Study.Evidence.Thickener.Name,
            other.Name,
            Named(Fit.Body),
            Named(Fit.Strings),
            [.. At.Select(d => (Dose: d, Length: Strings(d)!)).Select(a => new DosedStringAnswer(
                a.Dose.Percent, Rounded.Four(a.Length.Median.Millimeters), Rounded.Four(a.Length.Low.Millimeters),
                Rounded.Four(a.Length.High.Millimeters)))])
            : null,
        Warnings = [.. warnings, .. Study.Evidence.Warnings.Select(EvidenceWords.Of)],
    };

    private static ShapeAnswer Shape(ShapeFit fit) => new(
        fit.Shape.Name,
        Named(fit.Parameters),
        fit.Aicc is { } aicc ? Math.Round(aicc, 2) : null,
        Math.Round(fit.Weight, 4),
        fit.ResidualRepeatability is { } scatter ? Math.Round(100 * scatter, 2) : null,
        fit.LackOfFitChance is { } chance ? Math.Round(chance, 4) : null,
        fit.Trouble);

    /// <summary>Parameters under the names that scripts know.</summary>
    private static Dictionary<string, ParameterAnswer> Named(IEnumerable<FittedParameter> parameters) => parameters.ToDictionary(
        p => p.Name.Replace(' ', '_').Replace('-', '_'),
        p => new ParameterAnswer(Rounded.Four(p.Value), p.StandardError is { } se ? Rounded.Four(se) : null, p.Unit, p.PriorDecides),
        StringComparer.Ordinal);
}
