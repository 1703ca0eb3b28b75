using Viscolog.Core.Charting;
using Viscolog.Plots.Characters;
using Viscolog.Text;
using Viscolog.Tui.Pattern;
using Viscolog.Wording;

namespace Viscolog.Tui.Batches;

/// <summary>What the trend screen shows: the chart, then limits, signals and capability in words.</summary>
internal static class TrendPage
{
    private const string Unit = "mPa·s";

    /// <summary>Part of the lines that the chart gets.</summary>
    private const double ChartPart = 0.7;

    public static Page Of(TrendState state, Canvas canvas) => Page.Of(canvas, Say("the trend"), page => Draw(page, state));

    private static void Draw(Page page, TrendState state)
    {
        var (width, height) = (page.Width, page.Height);
        page.Add(
            new Piece(" " + (state.Current is { } product ? Say($"{product.Name}: batches over time") : Say("No product")), Tone.Strong),
            new Piece(state.Products.Length > 1 ? Say($"   ({state.Chosen + 1} of {state.Products.Length})") : "", Tone.Dim),
            new Piece(page.Shared.Length > 0 ? $"   {page.Shared}" : "", Tone.Dim));
        var lines = new List<Piece>();
        if (state.Picture() is { } picture)
        {
            foreach (var line in TerminalChart.Lines(
                picture.Picture(),
                width - 2,
                Math.Max(8, (int)(ChartPart * (height - 3))),
                page.IsAscii))
            {
                page.Add(" " + line);
            }

            Describe(lines, picture.Chart, width);
        }
        else
        {
            page.Add("");
            Wrap(lines, width, state switch
            {
                { Current: null } => Say("The log keeps no specification that asks for a body: F8 in the list of runs adds one."),
                { Trend: null } => state.Said.Length > 0 ? state.Said : Say("working it out"),
                _ => Say($"No chart: {TrendWords.Of(((ChartOutcome.Refused)state.Charted()!).Reason)}."),
            }, Tone.Plain);
        }

        foreach (var left in state.Trend?.LeftOut ?? [])
        {
            Wrap(lines, width, TrendWords.LeftOut(left), Tone.Dim);
        }

        var more = page.AddScrolled(lines, state.Passed);
        page.Foot((more.Length > 0 ? more + "  " : "") + state.Said, TrendScreen.Keys);
    }

    private static void Describe(List<Piece> lines, ControlChart chart, int width)
    {
        string[] signals = [.. TrendWords.Signals(chart)];
        Wrap(
            lines,
            width,
            signals.Length == 0
                ? TrendWords.IsShort(chart) ? Say("Too few batches to call it in control; no rule is broken so far.")
                : Say("In control: no rule is broken.")
                : $"{Count.Of(signals.Length, Say("signal"), Say("signals"))}: {string.Join("; ", signals)}",
            signals.Length > 0 ? Tone.Bad : TrendWords.IsShort(chart) ? Tone.Plain : Tone.Good);
        if (signals.Length > 0)
        {
            Wrap(lines, width, TrendWords.ByChance, Tone.Dim);
        }

        Wrap(lines, width, Say($"Limits {TrendWords.Limits(chart, Unit)}; moving range {TrendWords.Range(chart, Unit)}"), Tone.Plain);
        if (chart.Cpk is { } cpk)
        {
            Wrap(lines, width, $"Cpk {TrendWords.Index(cpk)}, Ppk {TrendWords.Index(chart.Ppk!)}", Tone.Plain);
        }

        foreach (var warning in chart.Warnings)
        {
            Wrap(lines, width, TrendWords.Of(warning), Tone.Caution);
        }
    }

    private static void Wrap(List<Piece> lines, int width, string text, Tone tone)
        => lines.AddRange(Paragraph.Of(PlainText.Clean(text), width - 2).Select(l => new Piece(" " + l, tone)));
}
