using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Legends;
using Viscolog.Core.Advising;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>What all pictures have in common: title, axes, legend.</summary>
internal static class PlotFrame
{
    private const int TitleColumns = 56;
    private const int SubtitleColumns = 96;
    private const int NameColumns = 36;
    private const int ShortColumns = 12;
    private const double TextSize = PlotStyle.TextSize;

    /// <summary>An empty plot under the run's name.</summary>
    /// <param name="pictures">What will be drawn.</param>
    /// <param name="notes">What a person has to know of this picture; may be empty.</param>
    public static PlotModel Create(IReadOnlyList<RunPicture> pictures, IEnumerable<string> notes)
        => Create(pictures.Count == 1 ? Name(pictures[0], TitleColumns) : $"{pictures.Count} runs", string.Join(" · ", notes.Prepend(Conditions(pictures))));

    /// <summary>An empty plot under a title.</summary>
    public static PlotModel Create(string title, string subtitle)
    {
        var model = new PlotModel
        {
            Title = Literal(PlainText.Shorten(PlainText.Clean(title), TitleColumns)),
            TitleFontSize = 16,
            Subtitle = Literal(PlainText.Shorten(subtitle, SubtitleColumns)),
            SubtitleFontSize = TextSize,
            DefaultFontSize = TextSize,
            Background = OxyColors.White,
            TextColor = PlotStyle.Ink,
            PlotAreaBorderColor = PlotStyle.Ink,
            Padding = new OxyThickness(8, 8, 16, 8),
        };
        model.Legends.Add(new Legend
        {
            LegendPlacement = LegendPlacement.Outside,
            LegendPosition = LegendPosition.BottomCenter,
            LegendOrientation = LegendOrientation.Horizontal,
            LegendBorderThickness = 0,
            LegendFontSize = TextSize,
            LegendSymbolLength = 28,
            LegendItemSpacing = 18,
            LegendLineSpacing = 5,
        });
        return model;
    }

    /// <summary>The run's name, short enough for a legend, with what sets it apart from the others.</summary>
    public static string Label(RunPicture picture, IReadOnlyList<RunPicture> among)
    {
        string?[] apart =
        [
            Thickeners(among) is null ? PlainText.Shorten(PlainText.Clean(picture.Thickener), ShortColumns) : null,
            Temperatures(among) is null ? PlotText.Celsius(picture.ReferenceTemperature) : null,
        ];
        var more = string.Join(", ", apart.OfType<string>());
        return Literal(Name(picture, NameColumns) + (more.Length > 0 ? $" ({more})" : ""));
    }

    public static ViscosityAxis AddViscosity(PlotModel model, IReadOnlyList<RunPicture> pictures, double low, double high)
    {
        var at = Temperatures(pictures) is { } celsius ? $" at {celsius}" : "";
        var axis = Styled(new ViscosityAxis { Position = AxisPosition.Left, Minimum = low, Maximum = high });
        axis.Title = $"Viscosity{at}, {PlotText.Unit}";
        model.Axes.Add(axis);
        return axis;
    }

    public static void AddDose(PlotModel model, IReadOnlyList<RunPicture> pictures, double end)
    {
        var of = Thickeners(pictures) is { Length: > 0 } thickener ? $" of {PlainText.Shorten(thickener, NameColumns)}" : "";
        AddAcross(model, Literal($"Dose{of}, g per 100 g of base (%)"), end);
    }

    /// <summary>A linear axis across from 0, with a little room so that marks at 0 stay whole.</summary>
    public static void AddAcross(PlotModel model, string title, double end)
    {
        var axis = Styled(new LinearAxis { Position = AxisPosition.Bottom, Minimum = -0.02 * end, Maximum = end });
        axis.Title = title;
        model.Axes.Add(axis);
    }

    /// <summary>Grid and title alike on every axis.</summary>
    public static T Styled<T>(T axis)
        where T : Axis
    {
        axis.MajorGridlineStyle = LineStyle.Solid;
        axis.MajorGridlineColor = PlotStyle.Grid;
        axis.TicklineColor = PlotStyle.Ink;
        axis.AxisTitleDistance = 8;
        axis.TitleFontSize = TextSize + 1;
        return axis;
    }

    /// <summary>The value that all pictures share; null where they differ.</summary>
    public static string? Same(IReadOnlyList<RunPicture> pictures, Func<RunPicture, string> what)
        => pictures.Select(what).Distinct(StringComparer.Ordinal).Count() == 1 ? what(pictures[0]) : null;

    /// <summary>Keeps the drawing package from reading ^{ and _{ in a name as raised and lowered text.</summary>
    public static string Literal(string text)
        => text.Replace("^{", "^\u200B{", StringComparison.Ordinal).Replace("_{", "_\u200B{", StringComparison.Ordinal);

    private static string Name(RunPicture picture, int columns)
    {
        var name = PlainText.Clean(picture.Name ?? "");
        return name.Length == 0 ? "Run without a name" : PlainText.Shorten(name, columns);
    }

    private static string Conditions(IReadOnlyList<RunPicture> pictures)
    {
        var thickener = Thickeners(pictures) is { } same ? PlainText.Shorten(same, NameColumns) : "thickeners differ";
        var celsius = Temperatures(pictures) is { } one ? $"values at {one}" : "temperatures differ";
        var method = Same(pictures, p => p.Method ?? "") is { } how ? how : "methods differ";
        return string.Join(" · ", new[] { thickener, celsius, method }.Where(part => part.Length > 0));
    }

    private static string? Thickeners(IReadOnlyList<RunPicture> pictures) => Same(pictures, p => PlainText.Clean(p.Thickener));

    private static string? Temperatures(IReadOnlyList<RunPicture> pictures) => Same(pictures, p => PlotText.Celsius(p.ReferenceTemperature));
}
