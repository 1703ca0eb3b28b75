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
            ? Say("Weights: relative (each point counts by 1/stress); --weights none counts all alike")
            : Say("Weights: none (all points alike in Pa); --weights relative counts by 1/stress"));
        if (report.File.Source is { } source)
        {
            terminal.Wrapped(Say($"Rates: {source}"));
        }

        terminal.Line();
        var isWeighed = curve.Fits.Any(f => f.Weight >= WorthShowing);
        var shown = curve.Fits.Where(f => isWeighed ? f.Weight >= WorthShowing : f.Trouble is null).ToList();
        foreach (var fit in shown)
        {
            WriteFit(terminal, curve, fit);
        }

        var others = curve.Fits.Except(shown)
            .Select(f => $"{PlotText.Law(f.Model)} "
                + $"{(f.Trouble is null ? Shown.Chance(Percentage.FromFraction(f.Weight)) : $"({FlowWords.Of(f.Trouble)})")}").ToArray();
        if (others.Length > 0)
        {
            terminal.Wrapped(Say($"Also tried: {string.Join("; ", others)}"));
        }

        terminal.Line();
        WriteRates(terminal, report);
        terminal.Chart(FlowPlot.Of(picture), ChartLines);
        terminal.Written(written);
    }

    private static string Extent(FlowCurve curve)
        => Say($"{curve.Fitted.Length} points from {Shown.Number(curve.LeastRate.PerSecond)} to "
            + $"{Shown.Number(curve.MostRate.PerSecond)} 1/s");

    private static void WriteFit(CallOutput terminal, FlowCurve curve, FlowFit fit)
    {
        var aicc = fit.Aicc is { } a ? string.Create(Numbers, $"   AICc {a:0.0}") : "";
        var scatter = Math.Sqrt(fit.ResidualSumOfSquares!.Value / Math.Max(1, curve.Fitted.Length - fit.Parameters.Length));
        var off = curve.Weights == FlowWeights.Relative
            ? string.Create(Numbers, $"{100 * scatter:0.0} %")
            : $"{Shown.Number(scatter)} Pa";
        terminal.Emphasized(Say($"{PlotText.Law(fit.Model),-18} weight {Shown.Chance(Percentage.FromFraction(fit.Weight))}{aicc}   "
            + $"scatter {off}   {fit.Model.Law}"));
        terminal.Wrapped(string.Join("; ", fit.Parameters.Select(Parameter)), "    ");
    }

    private static string Parameter(FlowParameter parameter)
    {
        var name = Named(parameter);
        var unit = parameter.Unit == "1" ? "" : " " + parameter.Unit;
        if (parameter.UpperLimit is { } limit)
        {
            return Say($"{name} below {Shown.Number(limit)}{unit} (not significantly above 0)");
        }

        if (parameter is { Value: 0, StandardError: null })
        {
            return Say($"{name} taken as 0{unit} (the data do not show it)");
        }

        var error = parameter.StandardError is { } se ? $" ± {Shown.Number(se)}" : "";
        return $"{name} {Shown.Number(parameter.Value)}{error}{unit}";
    }

    private static string Process(string name) => name switch
    {
        "levelling" => Say("levelling"),
        "draining" => Say("draining"),
        "dip coating" => Say("dip coating"),
        "mixing and stirring" => Say("mixing and stirring"),
        "brushing and spraying" => Say("brushing and spraying"),
        _ => name,
    };

    private static string Named(FlowParameter parameter) => parameter.Words switch
    {
        "viscosity" => Say("viscosity"),
        "plastic viscosity" => Say("plastic viscosity"),
        "Casson viscosity" => Say("Casson viscosity"),
        "zero-shear viscosity" => Say("zero-shear viscosity"),
        "infinite-shear viscosity" => Say("infinite-shear viscosity"),
        "yield stress" => Say("yield stress"),
        "consistency" => Say("consistency"),
        "flow index" => Say("flow index"),
        "time" => Say("time", "law"),
        "index" => Say("index"),
        var other => other,
    };

    private static void WriteRates(CallOutput terminal, FlowReport report)
    {
        foreach (var at in report.At)
        {
            var name = at.At.Name is { } process ? Process(process) + ", " : "";
            var outside = at.IsOutside ? Say("   outside the data: a guess") : "";
            terminal.Line(Say($"At {name + Shown.Number(at.At.Rate.PerSecond) + " 1/s",-34} {Pas(at.Value.Median)} Pa·s "
                + $"({Pas(at.Value.Low)} to {Pas(at.Value.High)}){outside}"));
        }

        if (report.Curve.Index is { } index)
        {
            var outside = index.IsOutside ? Say(", partly outside the data") : "";
            terminal.Line(Say($"Shear-thinning index {Shown.Number(index.Value)}: viscosity at {Shown.Number(index.From.PerSecond)} over "
                + $"that at {Shown.Number(10 * index.From.PerSecond)} 1/s{outside}"));
        }

        if (report.Curve.Loop is { } loop)
        {
            terminal.Line(Say($"Loop area {Shown.Number(loop.Area)} Pa/s, {100 * loop.Part:0.#} % of the area under the way up"));
        }

        terminal.Line();
    }

    private static string Pas(Viscosity viscosity) => Shown.Number(viscosity.MilliPascalSeconds / 1000);
}
