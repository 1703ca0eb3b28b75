using Viscolog.Core.Flow;
using Viscolog.Core.Quantities;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>Viscosity over shear rate above, stress over shear rate below, all on logarithmic scales.</summary>
internal static class FlowPlot
{
    public static Picture Of(FlowPicture picture)
    {
        FlowPoint[] all = [.. picture.Points, .. picture.Others];
        var rates = Logarithmic("Shear rate, 1/s", "rate, 1/s", all.Select(p => p.Rate.PerSecond));
        var viscosity = Logarithmic("Viscosity, Pa·s", "viscosity, Pa.s", all.Select(p => p.Viscosity.MilliPascalSeconds / 1000)) with { From = 0.53 };
        var stress = Logarithmic("Stress, Pa", "stress, Pa", all.Select(p => p.Stress.Pascals)) with { To = 0.47 };
        var subtitle = picture.Best is { } best ? $"{best.Model.Name}: {PlainText.Shorten(best.Model.Law, 60)}" : "no law fitted";
        return new(picture.Name ?? "Flow curve", subtitle,
        [
            new(rates, viscosity, [.. Elements(picture, isTitled: true, (rate, viscosity) => viscosity)]),
            new(rates, stress, [.. Elements(picture, isTitled: false, (rate, viscosity) => rate * viscosity)]),
        ]);
    }

    private static Axis Logarithmic(string title, string brief, IEnumerable<double> values)
    {
        var (low, high) = Axis.Around(values, 0.04);
        return new(title, brief, low, high, IsLogarithmic: true);
    }

    private static IEnumerable<Element> Elements(FlowPicture picture, bool isTitled, Func<double, double, double> height)
    {
        double Up(ShearRate rate, Viscosity value) => height(rate.PerSecond, value.MilliPascalSeconds / 1000);
        Element.Marks Marks(Meaning meaning, IEnumerable<FlowPoint> points, string title)
            => new(meaning, null, [.. points.Select(p => new Spot(p.Rate.PerSecond, Up(p.Rate, p.Viscosity)))]) { Key = isTitled ? new(title, title) : null };
        if (!picture.Curve.IsEmpty)
        {
            yield return new Element.Area(Meaning.Found, null, [.. picture.Curve.Select(c => new Span(c.At.Rate.PerSecond, Up(c.At.Rate, c.Value.Low), Up(c.At.Rate, c.Value.High)))])
            {
                Key = isTitled ? new($"band, {PlotText.Level(picture.Curve[0].Value)}") : null,
            };
            yield return new Element.Line(Meaning.Median, null, [.. picture.Curve.Select(c => new Spot(c.At.Rate.PerSecond, Up(c.At.Rate, c.Value.Median)))])
            {
                Key = isTitled ? new("laws, mean by weight", "laws, mean by weight") : null,
            };
        }

        if (!picture.Others.IsEmpty)
        {
            yield return Marks(Meaning.WayUp, picture.Others, "read on the way up");
        }

        yield return Marks(Meaning.Reading, picture.Points, "read");
    }
}
