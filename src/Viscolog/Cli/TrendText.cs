using Viscolog.Plots;
using Viscolog.Plots.Characters;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Cli;

/// <summary>A control chart as a person reads it.</summary>
internal static class TrendText
{
    private const int ChartLines = 24;

    public static void Write(CallOutput terminal, TrendPicture picture, string unit)
    {
        var chart = picture.Chart;
        terminal.Line($"{PlainText.Shorten(PlainText.Clean(picture.Title), 40)} · {Count.Of(chart.Points.Length, "batch", "batches")} · {(picture.IsLog ? "log" : "linear")} scale");
        terminal.Line();
        var signals = TrendWords.Signals(chart).ToList();
        terminal.Emphasized(signals.Count == 0 ? "  IN CONTROL: no rule is broken." : $"  {Count.Of(signals.Count, "SIGNAL", "SIGNALS")}");
        foreach (var signal in signals)
        {
            Row(terminal, "", signal);
        }

        terminal.Line();
        Row(terminal, "Limits", TrendWords.Limits(chart, unit));
        Row(terminal, "Moving range", TrendWords.Range(chart, unit));
        if (chart.Cpk is { } cpk)
        {
            Row(terminal, "Wanted", string.Join(" to ", new[] { chart.Low, chart.High }.Select(w => w is { } v ? Shown.Limit(v) : "any")) + (unit.Length == 0 ? "" : " " + unit));
            Row(terminal, "Cpk", TrendWords.Index(cpk) + ", by the moving range");
            Row(terminal, "Ppk", TrendWords.Index(chart.Ppk!) + ", by the deviation of all of them");
        }

        foreach (var warning in chart.Warnings)
        {
            Row(terminal, "Note", warning);
        }

        terminal.Line();
        foreach (var line in TerminalChart.Draw(picture.Picture(), Math.Min(terminal.Width - 2, 100), ChartLines, terminal.IsAscii))
        {
            terminal.Line(line);
        }
    }

    private static void Row(CallOutput terminal, string name, string text)
    {
        foreach (var line in Paragraph.Of(text, terminal.Width - 16))
        {
            terminal.Line($"  {name,-12}  {line}");
            name = "";
        }
    }
}
