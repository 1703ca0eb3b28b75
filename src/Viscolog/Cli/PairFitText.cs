using Viscolog.Core.Advising;
using Viscolog.Plots;
using Viscolog.Plots.Characters;
using Viscolog.Wording;

namespace Viscolog.Cli;

/// <summary>A fit of two thickeners as a person reads it.</summary>
internal static class PairFitText
{
    public static void Write(CallOutput terminal, PairFitReport report, PairPicture picture)
    {
        var (evidence, roles) = (report.Posterior.Evidence, report.Roles);
        terminal.Line(RunTitle.Of(evidence.Run));
        terminal.Line($"{Count.Of(evidence.ReadingCount, "reading", "readings")} of body, {Count.Of(evidence.StringCount, "reading", "readings")} of string");
        terminal.Line();
        terminal.Emphasized($"body: {roles.BodyThickener.Name} by a shape, {roles.StringThickener.Name} on top");
        foreach (var fit in report.Fit.Shapes)
        {
            FitText.WriteShape(terminal, fit);
        }

        FitText.WriteWrapped(terminal, string.Join("; ", report.Fit.Body.Select(FitText.Parameter)), "    ");
        terminal.Emphasized("string");
        FitText.WriteWrapped(terminal, string.Join("; ", report.Fit.Strings.Select(FitText.Parameter)), "    ");
        if (report.Fit.Body.Concat(report.Fit.Strings).Concat(report.Fit.Shapes.SelectMany(s => s.Parameters)).Any(p => p.PriorDecides))
        {
            FitText.WriteWrapped(terminal, "* The readings hardly tell: the prior decides (see docs/science.md).", "");
        }

        foreach (var warning in evidence.Warnings)
        {
            FitText.WriteWrapped(terminal, "Note: " + warning, "");
        }

        terminal.Line();
        foreach (var dose in report.At)
        {
            var (body, length) = (report.Body(dose), report.String(dose));
            FitText.WriteWrapped(terminal, $"At {Shown.Dose(dose)} {roles.BodyThickener.Name} and {Shown.Dose(report.StringDose)} {roles.StringThickener.Name}: {Shown.Body(body.Median)} ({Shown.Spread(body)}), string {Shown.Length(length.Median)} ({Shown.Spread(length)}), 9 times in 10", "");
        }

        foreach (var line in TerminalChart.Draw(PairMapPlot.Of(picture), Math.Min(terminal.Width - 2, 100), 22, terminal.IsAscii))
        {
            terminal.Line(line);
        }
    }
}
