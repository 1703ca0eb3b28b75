using System.Collections.Immutable;
using Viscolog.Cli.Json;
using Viscolog.Core.Advising;
using Viscolog.Core.Fitting;
using Viscolog.Core.Inference;
using Viscolog.Core.Quantities;

namespace Viscolog.Cli;

/// <summary>What <c>fit</c> answers.</summary>
internal sealed record FitReport(
    ImmutableArray<ShapeFit> Fits,
    ImmutableArray<(Dose Dose, Estimate Body)> At,
    ViscosityBand? Band,
    DoseEstimate? DoseForTarget,
    TestDose? TestNext)
{
    public FitAnswer ToAnswer(string? name, IReadOnlyList<string> warnings) => new()
    {
        Run = name,
        Shapes = [.. Fits.Select(Shape)],
        At = [.. At.Select(a => new DosedBodyAnswer(
            a.Dose.Percent,
            Rounded.Four(a.Body.Median.MilliPascalSeconds),
            Rounded.Four(a.Body.Low.MilliPascalSeconds),
            Rounded.Four(a.Body.High.MilliPascalSeconds)))],
        DoseForTarget = DoseForTarget is { } dose
            ? new(Rounded.Four(dose.Median.Percent), Rounded.Four(dose.Low.Percent), dose.High is { } high ? Rounded.Four(high.Percent) : null)
            : null,
        TestNext = TestNext is { } next
            ? new(Rounded.Four(next.Dose.Percent), BodyAnswer.Of(next.Expected), Math.Round(next.Gain.Percent, 1), next.Why)
            : null,
        Warnings = warnings,
    };

    /// <summary>Parameters under the names that scripts know.</summary>
    public static Dictionary<string, ParameterAnswer> Named(IEnumerable<FittedParameter> parameters) => parameters.ToDictionary(
        p => p.Name.Replace(' ', '_').Replace('-', '_'),
        p => new ParameterAnswer(Rounded.Four(p.Value), p.StandardError is { } se ? Rounded.Four(se) : null, p.Unit, p.PriorDecides),
        StringComparer.Ordinal);

    public static ShapeAnswer Shape(ShapeFit fit) => new(
        fit.Shape.Name,
        Named(fit.Parameters),
        fit.Aicc is { } aicc ? Math.Round(aicc, 2) : null,
        Math.Round(fit.Weight, 4),
        fit.ResidualRepeatability is { } scatter ? Math.Round(100 * scatter, 2) : null,
        fit.LackOfFitChance is { } chance ? Math.Round(chance, 4) : null,
        fit.Trouble);
}
