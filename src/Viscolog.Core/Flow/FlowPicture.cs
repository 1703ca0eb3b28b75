using System.Collections.Immutable;

namespace Viscolog.Core.Flow;

/// <summary>Everything that a chart of a flow curve shows, computed once: the terminal, SVG, PDF and PNG all draw these samples.</summary>
/// <param name="Name">The sample's name; null where it has none.</param>
/// <param name="Points">The points that were fitted.</param>
/// <param name="Others">Points that were not: the way up of a loop.</param>
/// <param name="Curve">The laws' mean over the rates, in rising order; empty where none was fitted.</param>
/// <param name="Best">The law with the greatest weight; null where none was fitted.</param>
public sealed record FlowPicture(string? Name, ImmutableArray<FlowPoint> Points, ImmutableArray<FlowPoint> Others, ImmutableArray<RateViscosity> Curve, FlowFit? Best)
{
    private const int Samples = 80;

    /// <summary>How far the curve is drawn beyond the data: a tenth of a decade.</summary>
    private const double Beyond = 0.1;

    /// <summary>The picture of a curve.</summary>
    /// <param name="name">The sample's name.</param>
    /// <param name="curve">The curve.</param>
    public static FlowPicture Of(string? name, FlowCurve curve)
    {
        var (low, high) = (Math.Log10(curve.LeastRate.PerSecond) - Beyond, Math.Log10(curve.MostRate.PerSecond) + Beyond);
        var samples = Enumerable.Range(0, Samples + 1)
            .Select(i => curve.At(new(null, Quantities.ShearRate.FromPerSecond(Math.Pow(10, low + ((high - low) * i / Samples))))))
            .OfType<RateViscosity>();
        return new(
            name,
            curve.Fitted,
            curve.Fitted.Length < curve.Points.Length ? curve.Loop!.Up : [],
            [.. samples],
            curve.Fits.FirstOrDefault(f => f.Weight > 0));
    }
}
