using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Flow;

/// <summary>Everything that a chart of a flow curve shows, computed once: the terminal, SVG, PDF and PNG all draw these samples.</summary>
/// <param name="Name">The sample's name; null where it has none.</param>
/// <param name="Points">The points that were fitted.</param>
/// <param name="Others">Points that were not: the way up of a loop.</param>
/// <param name="Curve">The laws' mean over the rates, in rising order; empty where none was fitted.</param>
/// <param name="Best">The law with the greatest weight; null where none was fitted.</param>
public sealed record FlowPicture(
    string? Name, ImmutableArray<FlowPoint> Points, ImmutableArray<FlowPoint> Others, ImmutableArray<RateViscosity> Curve, FlowFit? Best)
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

/// <summary>A viscosity read off the fitted laws at a rate.</summary>
/// <param name="At">The rate.</param>
/// <param name="Value">The viscosity; the interval holds it nine times in ten as far as laws and scatter tell.</param>
/// <param name="IsOutside">Whether the rate lies outside the data: then the value is a guess by the laws.</param>
public sealed record RateViscosity(NamedRate At, Estimate Value, bool IsOutside);

/// <summary>A shear rate that a process is known for.</summary>
/// <param name="Name">The process; null for a rate that was asked for.</param>
/// <param name="Rate">The rate.</param>
public sealed record NamedRate(string? Name, ShearRate Rate)
{
    /// <summary>
    /// Middles of the ranges in Barnes, Hutton and Walters, An Introduction to Rheology, Elsevier 1989, table 2.1 (from memory).
    /// </summary>
    public static IReadOnlyList<NamedRate> Usual { get; } =
    [
        new("levelling", ShearRate.FromPerSecond(0.03)),
        new("draining", ShearRate.FromPerSecond(1)),
        new("dip coating", ShearRate.FromPerSecond(30)),
        new("mixing and stirring", ShearRate.FromPerSecond(100)),
        new("brushing and spraying", ShearRate.FromPerSecond(3000)),
    ];
}
