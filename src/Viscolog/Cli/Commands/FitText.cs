using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Core.Advising;
using Viscolog.Core.Fitting;
using Viscolog.Core.Inference;
using Viscolog.Core.Quantities;
using Viscolog.Plots;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>A fit as a person reads it.</summary>
internal static class FitText
{
    /// <summary>Shapes under this weight are named without their parameters.</summary>
    private const double WorthShowing = 0.05;

    public static void Write(CallOutput terminal, FitReport report)
    {
        var (study, fit) = (report.Study, report.Fit);
        terminal.Line(RunTitle.Of(study.Evidence.Run));
        terminal.Line(Readings(study));
        terminal.Line();
        if (study.Evidence.StringThickener is { } other)
        {
            terminal.Emphasized($"body: {study.Evidence.Thickener.Name} by a shape, {other.Name} on top");
        }

        var (
            heavy,
            light) = (fit.Shapes.Where(f => f.Weight >= WorthShowing).ToList(), fit.Shapes.Where(f => f.Weight < WorthShowing).ToList());
        heavy.ForEach(f => WriteShape(terminal, f));
        if (light.Count > 0)
        {
            terminal.Wrapped("Also tried: "
                + string.Join(", ", light.Select(f => $"{f.Shape.Name} {Shown.Chance(Percentage.FromFraction(f.Weight))}")));
        }

        if (fit.Strings.Length > 0)
        {
            terminal.Wrapped(string.Join("; ", fit.Body.Select(Parameter)), "    ");
            terminal.Emphasized("string");
            terminal.Wrapped(string.Join("; ", fit.Strings.Select(Parameter)), "    ");
        }

        if (heavy.SelectMany(f => f.Parameters).Concat(fit.Body).Concat(fit.Strings).Any(p => p.PriorDecides))
        {
            terminal.Wrapped("* The readings say little about this; the prior decides (see docs/science.md).");
        }

        foreach (var warning in study.Evidence.Warnings)
        {
            terminal.Wrapped("Note: " + EvidenceWords.Of(warning));
        }

        terminal.Line();
        WriteDoses(terminal, report);
        terminal.Chart(RunPlots.Usual(study.Curve), study.IsOfTwo ? 22 : 20);
    }

    private static string Readings(Study study) => study.IsOfTwo
        ? $"{Count.Of(study.Evidence.ReadingCount, "reading", "readings")} of body, "
            + $"{Count.Of(study.Evidence.StringCount, "reading", "readings")} of string"
        : string.Create(CultureInfo.InvariantCulture,
            $"{Count.Of(study.Evidence.ReadingCount, "reading", "readings")}, repeatability "
                + $"{100 * study.Evidence.Run.RepeatabilityInForce.Fraction:0.#} %, thickener {study.Evidence.Thickener.Name}");

    private static void WriteShape(CallOutput terminal, ShapeFit fit)
    {
        var aicc = fit.Aicc is { } a ? FormattableString.Invariant($"   AICc {a:0.0}") : "";
        var scatter = fit.ResidualRepeatability is { } s ? FormattableString.Invariant($"   scatter {100 * s:0.0} %") : "";
        var lack = fit.LackOfFitChance is { } p ? FormattableString.Invariant($"   lack of fit p = {p:0.00}") : "";
        terminal.Emphasized($"{fit.Shape.Name,-14} weight {Shown.Chance(Percentage.FromFraction(fit.Weight))}{aicc}{scatter}{lack}");
        terminal.Wrapped(string.Join("; ", fit.Parameters.Select(Parameter)), "    ");
        if (fit.Trouble is not null)
        {
            terminal.Wrapped("only roughly: the readings allow more than one set of these parameters", "    ");
        }
    }

    private static string Parameter(FittedParameter parameter)
    {
        var unit = parameter.Unit == "1" ? "" : " " + parameter.Unit;
        var error = parameter.StandardError is { } se ? $" ± {Shown.Number(se)}" : "";
        return $"{parameter.Name} {Shown.Number(parameter.Value)}{error}{unit}{(parameter.PriorDecides ? " *" : "")}";
    }

    private static void WriteDoses(CallOutput terminal, FitReport report)
    {
        var (study, roles) = (report.Study, report.Study.Evidence);
        foreach (var dose in report.At)
        {
            var body = report.Body(dose);
            var value = $"{Shown.Body(body.Median)} ({Shown.Spread(body)})";
            terminal.Wrapped(report.Strings(dose) is { } length
                ? $"At {Shown.Dose(dose)} {roles.Thickener.Name} and {Shown.Dose(report.Doses(dose).Strings)} "
                    + $"{roles.StringThickener!.Name}: {value}, string {Shown.Length(length.Median)} ({Shown.Spread(length)}), 9 "
                    + $"times in 10"
                : $"At {Shown.Dose(dose)}: {value}, 9 times in 10");
        }

        if (study.IsOfTwo)
        {
            return;
        }

        if (study.Band is { } band)
        {
            terminal.Line(report.DoseForTarget is { } dose
                ? $"Dose for {Shown.Stated(band.Aim)}: {Shown.Dose(dose.Median)} ({Shown.Dose(dose.Low)} to "
                    + $"{(dose.High is { } high ? Shown.Dose(high) : "beyond the range")}), 9 times in 10"
                : FormattableString.Invariant(
                    $"Dose for {Shown.Stated(band.Aim)}: not expected within {Posterior.SoughtUpTo} times the usual range"));
        }

        if (report.Fit.TestNext is { } next)
        {
            terminal.Wrapped($"To learn the curve, test {Shown.Dose(next.Dose)} next (about {Shown.Body(next.Expected.Median)}). "
                + $"{ReasonWords.Of(next)}");
        }

        terminal.Line();
    }
}
