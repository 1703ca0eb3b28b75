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
        var rates = Logarithmic(Say("Shear rate, 1/s"), Say("rate, 1/s"), all.Select(p => p.Rate.PerSecond));
        var viscosity = Logarithmic(
            Say("Viscosity, Pa·s"), Say("viscosity, Pa.s"), all.Select(p => p.Viscosity.MilliPascalSeconds / 1000));
        var stress = Logarithmic(Say("Stress, Pa"), Say("stress, Pa"), all.Select(p => p.Stress.Pascals));
        var subtitle = picture.Best is { } best
            ? $"{PlotText.Law(best.Model)}: {PlainText.Shorten(best.Model.Law, 60)}"
            : Say("no law fitted");
        return new(picture.Name ?? Say("Flow curve"), subtitle,
        [
            new(rates, viscosity with { From = 0.53 }, [.. Elements(picture, isTitled: true, (rate, viscosity) => viscosity)]),
            new(rates, stress with { To = 0.47 }, [.. Elements(picture, isTitled: false, (rate, viscosity) => rate * viscosity)]),
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
        Span Edges(RateViscosity c) => new(c.At.Rate.PerSecond, Up(c.At.Rate, c.Value.Low), Up(c.At.Rate, c.Value.High));
        Spot Middle(RateViscosity c) => new(c.At.Rate.PerSecond, Up(c.At.Rate, c.Value.Median));
        Spot Read(FlowPoint p) => new(p.Rate.PerSecond, Up(p.Rate, p.Viscosity));
        LegendLine? Key(string text) => isTitled ? new(text, text) : null;
        if (!picture.Curve.IsEmpty)
        {
            var key = isTitled ? new LegendLine(Say($"band, {PlotText.Level(picture.Curve[0].Value)}", "curve")) : null;
            yield return new Element.Area(Meaning.Found, null, [.. picture.Curve.Select(Edges)]) { Key = key };
            yield return new Element.Line(Meaning.Median, null, [.. picture.Curve.Select(Middle)])
            {
                Key = Key(Say("laws, mean by weight")),
            };
        }

        if (!picture.Others.IsEmpty)
        {
            yield return new Element.Marks(Meaning.WayUp, null, [.. picture.Others.Select(Read)])
            {
                Key = Key(Say("read on the way up")),
            };
        }

        yield return new Element.Marks(Meaning.Reading, null, [.. picture.Points.Select(Read)]) { Key = Key(Say("read", "mark")) };
    }
}
