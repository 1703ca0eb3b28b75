using System.Collections.Immutable;
using Viscolog.Cli.Json;
using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;

namespace Viscolog.Cli;

/// <summary>What <c>fit</c> answers for a run with two thickeners; doses asked for are of the body thickener, the other stays where it is.</summary>
internal sealed record PairFitReport(Posterior Posterior, PairFit Fit, ImmutableArray<Dose> At)
{
    public PairRoles Roles => Posterior.Evidence.Roles;

    public Dose StringDose => Posterior.Evidence.Run.PotNow().DoseOf(Roles.StringThickener.Name);

    public Estimate Body(Dose dose) => Posterior.BodyAt(new(dose, StringDose), Advisor.Level);

    public LengthEstimate String(Dose dose) => Posterior.StringAt(new(dose, StringDose), Advisor.Level);

    public FitAnswer ToAnswer(IReadOnlyList<string> warnings) => new()
    {
        Run = Posterior.Evidence.Run.Name,
        Shapes = [.. Fit.Shapes.Select(FitReport.Shape)],
        At = [.. At.Select(d => (Dose: d, Body: Body(d))).Select(a => new DosedBodyAnswer(
            a.Dose.Percent, Rounded.Four(a.Body.Median.MilliPascalSeconds), Rounded.Four(a.Body.Low.MilliPascalSeconds), Rounded.Four(a.Body.High.MilliPascalSeconds)))],
        Pair = new(
            Roles.BodyThickener.Name,
            Roles.StringThickener.Name,
            FitReport.Named(Fit.Body),
            FitReport.Named(Fit.Strings),
            [.. At.Select(d => (Dose: d, Length: String(d))).Select(a => new DosedStringAnswer(
                a.Dose.Percent, Rounded.Four(a.Length.Median.Millimeters), Rounded.Four(a.Length.Low.Millimeters), Rounded.Four(a.Length.High.Millimeters)))]),
        Warnings = [.. warnings, .. Posterior.Evidence.Warnings],
    };
}
