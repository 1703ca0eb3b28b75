using Viscolog.Core.Advising;
using Viscolog.Core.Fitting;
using Viscolog.Core.Inference;
using Viscolog.Plots;
using Viscolog.Plots.Characters;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Cli;

/// <summary>A fit as a person reads it.</summary>
internal static class FitText
{
    /// <summary>Shapes under this weight are named without their parameters.</summary>
    private const double WorthShowing = 0.05;

    public static void Write(CallOutput terminal, Posterior posterior, FitReport report, RunPicture picture)
    {
        var run = posterior.Evidence.Run;
        terminal.Line(RunTitle.Of(run));
        terminal.Line(FormattableString.Invariant(
            $"{(posterior.Evidence.ReadingCount == 1 ? "1 reading" : $"{posterior.Evidence.ReadingCount} readings")}, repeatability {100 * run.RepeatabilityInForce.Fraction:0.#} %, thickener {posterior.Evidence.Thickener.Name}"));
        terminal.Line();
        foreach (var fit in report.Fits.Where(f => f.Weight >= WorthShowing))
        {
            WriteShape(terminal, fit);
        }

        var light = report.Fits.Where(f => f.Weight < WorthShowing).Select(f => $"{f.Shape.Name} {Shown.Chance(Core.Quantities.Percentage.FromFraction(f.Weight))}").ToArray();
        if (light.Length > 0)
        {
            WriteWrapped(terminal, "Also tried: " + string.Join(", ", light), "");
        }

        if (report.Fits.Any(f => f.Weight >= WorthShowing && f.Parameters.Any(p => p.PriorDecides)))
        {
            WriteWrapped(terminal, "* The readings hardly tell: the prior decides (see docs/science.md).", "");
        }

        foreach (var warning in posterior.Evidence.Warnings)
        {
            WriteWrapped(terminal, "Note: " + warning, "");
        }

        terminal.Line();
        WriteDoses(terminal, report);
        foreach (var line in TerminalChart.Draw(DosePlot.Of(picture), Math.Min(terminal.Width - 2, 100), 20, terminal.IsAscii))
        {
            terminal.Line(line);
        }
    }

    public static void WriteShape(CallOutput terminal, ShapeFit fit)
    {
        var aicc = fit.Aicc is { } a ? FormattableString.Invariant($"   AICc {a:0.0}") : "";
        var scatter = fit.ResidualRepeatability is { } s ? FormattableString.Invariant($"   scatter {100 * s:0.0} %") : "";
        var lack = fit.LackOfFitChance is { } p ? FormattableString.Invariant($"   lack of fit p = {p:0.00}") : "";
        terminal.Emphasized($"{fit.Shape.Name,-14} weight {Shown.Chance(Core.Quantities.Percentage.FromFraction(fit.Weight))}{aicc}{scatter}{lack}");
        WriteWrapped(terminal, string.Join("; ", fit.Parameters.Select(Parameter)), "    ");
        if (fit.Trouble is not null)
        {
            WriteWrapped(terminal, "only roughly: the readings leave more than one set of these parameters open", "    ");
        }
    }

    public static string Parameter(FittedParameter parameter)
    {
        var unit = parameter.Unit == "1" ? "" : " " + parameter.Unit;
        var error = parameter.StandardError is { } se ? $" ± {Shown.Number(se)}" : "";
        return $"{parameter.Name} {Shown.Number(parameter.Value)}{error}{unit}{(parameter.PriorDecides ? " *" : "")}";
    }

    private static void WriteDoses(CallOutput terminal, FitReport report)
    {
        foreach (var (dose, body) in report.At)
        {
            terminal.Line($"At {Shown.Dose(dose)}: {Shown.Body(body.Median)} ({Shown.Spread(body)}), 9 times in 10");
        }

        if (report.Band is { } band)
        {
            terminal.Line(report.DoseForTarget is { } dose
                ? $"Dose for {Shown.Body(band.Aim)}: {Shown.Dose(dose.Median)} ({Shown.Dose(dose.Low)} to {(dose.High is { } high ? Shown.Dose(high) : "beyond the range")}), 9 times in 10"
                : $"Dose for {Shown.Body(band.Aim)}: not expected within 1.2 times the usual range");
        }

        if (report.TestNext is { } next)
        {
            WriteWrapped(terminal, $"To learn the curve, test {Shown.Dose(next.Dose)} next (about {Shown.Body(next.Expected.Median)}). {next.Why}", "");
        }

        terminal.Line();
    }

    public static void WriteWrapped(CallOutput terminal, string text, string indent)
    {
        foreach (var line in Paragraph.Of(text, terminal.Width - indent.Length))
        {
            terminal.Line(indent + line);
        }
    }
}
