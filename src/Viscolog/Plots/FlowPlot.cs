using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Legends;
using Viscolog.Core.Flow;
using Viscolog.Core.Quantities;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>Viscosity over shear rate above, stress over shear rate below, all on logarithmic scales.</summary>
internal static class FlowPlot
{
    private const string Upper = "viscosity";
    private const string Lower = "stress";

    public static PlotModel Build(FlowPicture picture)
    {
        var model = PlotFrame.Create(picture.Name ?? "Flow curve", Subtitle(picture));
        if (model.Legends[0] is Legend legend)
        {
            legend.LegendSymbolLength = 28;
        }

        FlowPoint[] all = [.. picture.Points, .. picture.Others];
        var rates = Window(all.Select(p => p.Rate.PerSecond).Concat(picture.Curve.Select(c => c.At.Rate.PerSecond)));
        model.Axes.Add(Axis(AxisPosition.Bottom, "rate", "Shear rate, 1/s", rates, 0, 1));
        model.Axes.Add(Axis(AxisPosition.Left, Upper, "Viscosity, Pa·s", Window(all.Select(p => p.Viscosity.MilliPascalSeconds / 1000)), 0.53, 1));
        model.Axes.Add(Axis(AxisPosition.Left, Lower, "Stress, Pa", Window(all.Select(p => p.Stress.Pascals)), 0, 0.47));
        AddPanel(model, picture, Upper, titled: true, (rate, viscosity) => viscosity);
        AddPanel(model, picture, Lower, titled: false, (rate, viscosity) => rate * viscosity);
        return model;
    }

    private static string Subtitle(FlowPicture picture)
        => picture.Best is { } best ? $"{best.Model.Name}: {PlainText.Shorten(best.Model.Law, 60)}" : "no law fitted";

    private static (double Low, double High) Window(IEnumerable<double> values)
    {
        double[] all = [.. values];
        var (low, high) = (all.Min(), all.Max());
        var pad = Math.Max(0.08 * Math.Log(high / low), 0.1);
        return (low * Math.Exp(-pad), high * Math.Exp(pad));
    }

    private static ViscosityAxis Axis(AxisPosition position, string key, string title, (double Low, double High) window, double from, double to)
    {
        var axis = PlotFrame.Styled(new ViscosityAxis { Position = position, Key = key, Minimum = window.Low, Maximum = window.High, StartPosition = from, EndPosition = to });
        axis.Title = title;
        return axis;
    }

    private static void AddPanel(PlotModel model, FlowPicture picture, string axis, bool titled, Func<double, double, double> height)
    {
        if (!picture.Curve.IsEmpty)
        {
            var band = RunTraces.Band(titled ? "band, 90 %" : null, picture.Curve.Select(c => (c.At.Rate.PerSecond, Scaled(c))), OxyColor.FromAColor(0x40, PlotStyle.Curve), LineStyle.None);
            band.YAxisKey = axis;
            model.Series.Add(band);
            var line = RunTraces.Line(titled ? "laws, mean by weight" : null, picture.Curve.Select(c => Point(c.At.Rate.PerSecond, c.Value.Median)), PlotStyle.Curve, LineStyle.Solid);
            line.YAxisKey = axis;
            model.Series.Add(line);
        }

        AddMarks(titled ? "read" : null, picture.Points, 0, PlotStyle.Ink);
        if (!picture.Others.IsEmpty)
        {
            AddMarks(titled ? "read on the way up" : null, picture.Others, 2, PlotStyle.Next);
        }

        DataPoint Point(double rate, Viscosity viscosity) => new(rate, height(rate, viscosity.MilliPascalSeconds / 1000));

        // The band's maker takes viscosities; here they stand for whatever the panel shows.
        Estimate Scaled(RateViscosity c)
        {
            Viscosity To(Viscosity v) => Viscosity.FromMilliPascalSeconds(height(c.At.Rate.PerSecond, v.MilliPascalSeconds / 1000));
            return new(To(c.Value.Median), To(c.Value.Low), To(c.Value.High), c.Value.Level);
        }

        void AddMarks(string? title, IEnumerable<FlowPoint> points, int shape, OxyColor color)
        {
            var marks = RunTraces.Marks(title, points.Select(p => Point(p.Rate.PerSecond, p.Viscosity)), shape, color, OxyColors.White);
            marks.YAxisKey = axis;
            model.Series.Add(marks);
        }
    }
}
