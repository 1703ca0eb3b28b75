using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Legends;
using Viscolog.Text;

namespace Viscolog.Plots.Oxy;

/// <summary>Makes the drawing package's model of a picture: title, legend, axes, and each panel's elements.</summary>
internal static class OxyPicture
{
    private const int TitleColumns = 56;
    private const int SubtitleColumns = 96;

    /// <summary>Columns of labels that have room under the widest panel.</summary>
    private const int ColumnsAcross = 84;

    /// <summary>Columns between the names of an axis.</summary>
    private const int GapColumns = 2;

    /// <summary>The share of the width kept at the right for the names of traces.</summary>
    private const double EndsShare = 0.13;

    /// <summary>A model of its own each time, as rendering changes it.</summary>
    public static PlotModel Of(Picture picture)
    {
        var model = new PlotModel
        {
            Title = picture.Title is { } title ? Literal(PlainText.Shorten(PlainText.Clean(title), TitleColumns)) : null,
            TitleFontSize = 16,
            Subtitle = picture.Subtitle is { } subtitle ? Literal(PlainText.Shorten(subtitle, SubtitleColumns)) : null,
            SubtitleFontSize = Looks.TextSize,
            DefaultFontSize = Looks.TextSize,
            Background = OxyColors.White,
            TextColor = Looks.Ink,
            PlotAreaBorderColor = Looks.Ink,
            Padding = new OxyThickness(8, 8, 16, 8),
        };
        model.Legends.Add(Legend(picture));
        if (picture.Panels.Select(p => p.Across).Distinct().Count() > 1 && picture.Panels.Select(p => p.Up).Distinct().Count() > 1)
        {
            // Rows and columns stand apart, without a frame around them all.
            model.PlotAreaBorderThickness = new OxyThickness(0);
        }

        foreach (var panel in picture.Panels)
        {
            var up = Key(model, panel.Up, AxisPosition.Left, widened: false);
            var across = Key(model, panel.Across, AxisPosition.Bottom, panel.Elements.Any(e => e is Element.Ends));
            OxyPanel.Add(model, panel, up, across);
        }

        return model;
    }

    /// <summary>Keeps the drawing package from reading ^{ and _{ in a name as raised and lowered text.</summary>
    public static string Literal(string text)
        => text.Replace("^{", "^\u200B{", StringComparison.Ordinal).Replace("_{", "_\u200B{", StringComparison.Ordinal);

    private static Legend Legend(Picture picture) => new()
    {
        LegendPlacement = LegendPlacement.Outside,
        LegendPosition = LegendPosition.BottomCenter,
        LegendOrientation = LegendOrientation.Horizontal,
        LegendBorderThickness = 0,
        LegendFontSize = Looks.TextSize,

        // Long enough to tell the dashes of several runs apart.
        LegendSymbolLength = picture.Panels.Any(p => p.Elements.Any(e => e is Element.RunKey { Look: KeyLook.LineAndMark })) ? 52 : 28,
        LegendItemSpacing = 18,
        LegendLineSpacing = 5,
    };

    /// <summary>The key of an axis in the model, where it stands once however many panels share it.</summary>
    private static string Key(PlotModel model, Axis axis, AxisPosition position, bool widened)
    {
        if (model.Axes.FirstOrDefault(a => ReferenceEquals(a.Tag, axis)) is { } there)
        {
            return there.Key;
        }

        var high = widened ? axis.High / (1 - EndsShare) : axis.High;
        var low = axis.Low - (axis.Room * (high - axis.Low));
        OxyPlot.Axes.Axis made = axis.IsLogarithmic ? new RoundLogarithmicAxis() : new LinearAxis { MinimumMajorStep = axis.LeastStep };
        (made.Minimum, made.Maximum, made.Title) = (low, high, Literal(axis.Title));
        (made.Position, made.Key, made.Tag) = (position, FormattableString.Invariant($"axis {model.Axes.Count}"), axis);
        (made.StartPosition, made.EndPosition) = (axis.From, axis.To);
        made.MajorGridlineStyle = axis.HasGrid ? LineStyle.Solid : LineStyle.None;
        made.MajorGridlineColor = Looks.Grid;
        made.TicklineColor = Looks.Ink;
        made.AxisTitleDistance = 8;
        made.TitleFontSize = Looks.TextSize + 1;
        made.LabelFormatter = axis.Label ?? made.LabelFormatter;
        if (!axis.Names.IsEmpty)
        {
            // As many as stand side by side.
            var columns = axis.Names.Max(n => PlainText.Columns(n)) + GapColumns;
            made.MajorStep = made.MinorStep = Math.Ceiling(axis.Names.Length * columns / (double)ColumnsAcross);
            made.LabelFormatter = v => Math.Round(v) is var place && Math.Abs(v - place) < 1e-6 && place >= 1 && place <= axis.Names.Length
                ? axis.Names[(int)place - 1] : "";
        }
        model.Axes.Add(made);
        return made.Key;
    }
}

/// <summary>A logarithmic axis whose labels are numbers in full at round values.</summary>
internal sealed class RoundLogarithmicAxis : LogarithmicAxis
{
    public RoundLogarithmicAxis() => LabelFormatter = PlotText.Tick;

    public override void GetTickValues(
        out IList<double> majorLabelValues, out IList<double> majorTickValues, out IList<double> minorTickValues)
    {
        majorTickValues = [.. Ticks.Logarithmic(ActualMinimum, ActualMaximum)];
        majorLabelValues = [.. majorTickValues];
        minorTickValues = [.. Ticks.Minor(ActualMinimum, ActualMaximum)];
    }
}
