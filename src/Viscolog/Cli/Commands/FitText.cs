using Viscolog.Cli.Calls;
using Viscolog.Core.Fitting;
using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;
using Viscolog.Plots;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>A fit as a person reads it.</summary>
internal static class FitText
{
    /// <summary>Shapes under this weight are named without their parameters.</summary>
    private const double WorthShowing = 0.05;

    private const int RowsOfOne = 20;
    private const int RowsOfMany = 22;

    public static void Write(CallOutput terminal, FitReport report)
    {
        var (study, fit) = (report.Study, report.Fit);
        var names = new FitNames(study.Evidence.Thickener.Name, study.Evidence.StringThickener?.Name);
        terminal.Line(RunTitle.Of(study.Evidence.Run));
        terminal.Line(Readings(study.Evidence, names));
        terminal.Line();
        if (names.StringThickener is { } other)
        {
            terminal.Emphasized(Say($"body: {names.Thickener} by a shape, {other} on top"));
        }

        var (
            heavy,
            light) = (fit.Shapes.Where(f => f.Weight >= WorthShowing).ToList(), fit.Shapes.Where(f => f.Weight < WorthShowing).ToList());
        heavy.ForEach(f => WriteShape(terminal, f, names));
        if (light.Count > 0)
        {
            var others = light.Select(f => $"{FitNames.Of(f.Shape)} {Shown.Chance(Percentage.FromFraction(f.Weight))}");
            terminal.Wrapped(Say($"Also tried: {string.Join(", ", others)}"));
        }

        if (fit.Strings.Length > 0)
        {
            terminal.Wrapped(Parameters(fit.Body, names), "    ");
            terminal.Emphasized(Say("string"));
            terminal.Wrapped(Parameters(fit.Strings, names), "    ");
        }

        if (heavy.SelectMany(f => f.Parameters).Concat(fit.Body).Concat(fit.Strings).Any(p => p.PriorDecides))
        {
            terminal.Wrapped(Say("* The readings say little about this; the prior decides (see docs/science.md)."));
        }

        foreach (var warning in study.Evidence.Warnings)
        {
            terminal.Wrapped(Say($"Note: {EvidenceWords.Of(warning)}"));
        }

        terminal.Line();
        WriteDoses(terminal, report);
        var picture = RunPlots.Usual(study.Curve);
        terminal.Chart(picture, picture.Panels.Length > 1 ? RowsOfMany : RowsOfOne);
    }

    private static string Readings(Evidence evidence, FitNames names)
    {
        var strings = names.StringThickener is null ? "" : Say($", {Counted(evidence.StringCount)} of string by {names.StringThickener}");
        return Say($"{Counted(evidence.ReadingCount)}, repeatability "
            + $"{100 * evidence.Run.RepeatabilityInForce.Fraction:0.#} %, thickener {names.Thickener}") + strings;
    }

    private static string Counted(int readings) => Count.Of(readings, Say("reading"), Say("readings"));

    private static void WriteShape(CallOutput terminal, ShapeFit fit, FitNames names)
    {
        var aicc = fit.Aicc is { } a ? string.Create(Numbers, $"   AICc {a:0.0}") : "";
        var scatter = fit.ResidualRepeatability is { } s ? Say($"   scatter {100 * s:0.0} %") : "";
        var lack = fit.LackOfFitChance is { } p ? Say($"   lack of fit p = {p:0.00}") : "";
        var weight = Shown.Chance(Percentage.FromFraction(fit.Weight));
        terminal.Emphasized(Say($"{FitNames.Of(fit.Shape),-14} weight {weight}{aicc}{scatter}{lack}"));
        terminal.Wrapped(Parameters(fit.Parameters, names), "    ");
        if (fit.Trouble is not null)
        {
            terminal.Wrapped(Say("only roughly: the readings allow more than one set of these parameters"), "    ");
        }
    }

    private static string Parameters(IEnumerable<FittedParameter> parameters, FitNames names)
        => string.Join("; ", parameters.Select(p => Parameter(p, names)));

    private static string Parameter(FittedParameter parameter, FitNames names)
    {
        var unit = parameter.Unit == "1" ? "" : " " + parameter.Unit;
        var error = parameter.StandardError is { } se ? $" ± {Shown.Number(se)}" : "";
        return $"{names.Of(parameter)} {Shown.Number(parameter.Value)}{error}{unit}{(parameter.PriorDecides ? " *" : "")}";
    }

    private static void WriteDoses(CallOutput terminal, FitReport report)
    {
        var (study, roles) = (report.Study, report.Study.Evidence);
        foreach (var dose in report.At)
        {
            var body = report.Body(dose);
            var value = $"{Shown.Body(body.Median)} ({Shown.Spread(body)})";
            terminal.Wrapped(report.Strings(dose) is { } length
                ? Say($"At {Shown.Dose(dose)} {roles.Thickener.Name} and {Shown.Dose(study.DosesAt(dose).Strings)} "
                    + $"{roles.StringThickener!.Name}: {value}, string {Shown.Length(length.Median)} ({Shown.Spread(length)}), 9 "
                    + $"times in 10")
                : Say($"At {Shown.Dose(dose)}: {value}, 9 times in 10"));
        }

        if (!report.Fit.Strings.IsEmpty)
        {
            return;
        }

        if (study.Band is { } band)
        {
            var aim = Shown.Stated(band.Aim);
            terminal.Line(study.DoseForTarget is not { } dose
                ? Say($"Dose for {aim}: not expected within {Posterior.SoughtUpTo} times the usual range")
                : dose.High is { } high
                ? Say($"Dose for {aim}: {Shown.Dose(dose.Median)} ({Shown.Dose(dose.Low)} to {Shown.Dose(high)}), 9 times in 10")
                : Say($"Dose for {aim}: {Shown.Dose(dose.Median)} ({Shown.Dose(dose.Low)} to beyond the range), 9 times in 10"));
        }

        if (report.Fit.TestNext is { } next)
        {
            terminal.Wrapped(Say($"To learn the curve, test {Shown.Dose(next.Dose)} next (about {Shown.Body(next.Expected.Median)}). "
                + $"{ReasonWords.Of(next)}"));
        }

        terminal.Line();
    }
}
