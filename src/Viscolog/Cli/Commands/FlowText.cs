using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Core.Flow;
using Viscolog.Core.Quantities;
using Viscolog.Plots;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>A flow curve as a person reads it.</summary>
internal static class FlowText
{
    /// <summary>Laws under this weight are named without their parameters.</summary>
    private const double WorthShowing = 0.05;

    private const int ChartLines = 26;

    public static void Write(CallOutput terminal, FlowReport report, FlowPicture picture, string? written)
    {
        var curve = report.Curve;
        terminal.Line(string.Join(
            " · ",
            new[] { report.File.Name is { } name ? PlainText.Shorten(TerminalText.Of(name), 40) : null, Extent(curve) }.OfType<string>()));
        terminal.Line(curve.Weights == FlowWeights.Relative
            ? "Weights: relative (each point counts by 1/stress); --weights none counts all alike"
            : "Weights: none (all points alike in Pa); --weights relative counts by 1/stress");
        if (report.File.Source is { } source)
        {
            terminal.Wrapped("Rates: " + source);
        }

        terminal.Line();
        var isWeighed = curve.Fits.Any(f => f.Weight >= WorthShowing);
        var shown = curve.Fits.Where(f => isWeighed ? f.Weight >= WorthShowing : f.Trouble is null).ToList();
        foreach (var fit in shown)
        {
            WriteFit(terminal, curve, fit);
        }

        var others = curve.Fits.Except(shown)
            .Select(f => $"{f.Model.Name} "
                + $"{(f.Trouble is null ? Shown.Chance(Percentage.FromFraction(f.Weight)) : $"({FlowWords.Of(f.Trouble)})")}").ToArray();
        if (others.Length > 0)
        {
            terminal.Wrapped("Also tried: " + string.Join("; ", others));
        }

        terminal.Line();
        WriteRates(terminal, report);
        terminal.Chart(FlowPlot.Of(picture), ChartLines);
        terminal.Written(written);
    }

    private static string Extent(FlowCurve curve)
        => $"{curve.Fitted.Length} points from {Shown.Number(curve.LeastRate.PerSecond)} to {Shown.Number(curve.MostRate.PerSecond)} 1/s";

    private static void WriteFit(CallOutput terminal, FlowCurve curve, FlowFit fit)
    {
        var aicc = fit.Aicc is { } a ? FormattableString.Invariant($"   AICc {a:0.0}") : "";
        var scatter = Math.Sqrt(fit.ResidualSumOfSquares!.Value / Math.Max(1, curve.Fitted.Length - fit.Parameters.Length));
        var off = curve.Weights == FlowWeights.Relative
            ? FormattableString.Invariant($"{100 * scatter:0.0} %")
            : $"{Shown.Number(scatter)} Pa";
        terminal.Emphasized($"{fit.Model.Name,-18} weight {Shown.Chance(Percentage.FromFraction(fit.Weight))}{aicc}   scatter {off}   "
            + $"{fit.Model.Law}");
        terminal.Wrapped(string.Join("; ", fit.Parameters.Select(Parameter)), "    ");
    }

    private static string Parameter(FlowParameter parameter)
    {
        var unit = parameter.Unit == "1" ? "" : " " + parameter.Unit;
        if (parameter.UpperLimit is { } limit)
        {
            return $"{parameter.Words} below {Shown.Number(limit)}{unit} (not significantly above 0)";
        }

        if (parameter is { Value: 0, StandardError: null })
        {
            return $"{parameter.Words} taken as 0{unit} (the data do not show it)";
        }

        var error = parameter.StandardError is { } se ? $" ± {Shown.Number(se)}" : "";
        return $"{parameter.Words} {Shown.Number(parameter.Value)}{error}{unit}";
    }

    private static void WriteRates(CallOutput terminal, FlowReport report)
    {
        foreach (var at in report.At)
        {
            var name = at.At.Name is { } process ? process + ", " : "";
            var outside = at.IsOutside ? "   outside the data: a guess" : "";
            terminal.Line($"At {name + Shown.Number(at.At.Rate.PerSecond) + " 1/s",-34} {Pas(at.Value.Median)} Pa·s ({Pas(at.Value.Low)} "
                + $"to {Pas(at.Value.High)}){outside}");
        }

        if (report.Curve.Index is { } index)
        {
            terminal.Line($"Shear-thinning index {Shown.Number(index.Value)}: viscosity at {Shown.Number(index.From.PerSecond)} over that "
                + $"at {Shown.Number(10 * index.From.PerSecond)} 1/s{(index.IsOutside ? ", partly outside the data" : "")}");
        }

        if (report.Curve.Loop is { } loop)
        {
            terminal.Line(string.Create(CultureInfo.InvariantCulture, $"Loop area {Shown.Number(loop.Area)} Pa/s, {100 * loop.Part:0.#} % "
                + $"of the area under the way up"));
        }

        terminal.Line();
    }

    private static string Pas(Viscosity viscosity) => Shown.Number(viscosity.MilliPascalSeconds / 1000);
}
