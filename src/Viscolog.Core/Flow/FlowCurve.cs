using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Flow;

/// <summary>All that a flow curve tells: fitted laws, viscosities at rates, thinning index, loop.</summary>
public sealed class FlowCurve
{
    /// <summary>Fewest points of which a curve is made.</summary>
    public const int FewestPoints = 3;

    /// <summary>Level of the intervals.</summary>
    public static Percentage Level { get; } = Quantities.Estimate.UsualLevel;

    /// <summary>Points of the way down that a fit needs before it is taken for the curve.</summary>
    private const int EnoughDown = 5;

    private static readonly double Quantile = Normal.InvCDF(0, 1, (1 + Level.Fraction) / 2);
    private const double LeastWeight = 1e-4;

    /// <summary>Far beyond any material, so that what senseless points lead to stays finite.</summary>
    private const double MostLn = 200;
    private const double MostSd = 50;

    private FlowCurve(ImmutableArray<FlowPoint> all, FlowWeights weights)
    {
        (Points, Weights) = (all, weights);
        Loop = FlowLoop.Find(all);
        Fitted = Loop is { Down.Length: >= EnoughDown } ? Loop.Down : all;
        Fits = FlowFits.Of(Fitted, weights);
        LeastRate = Fitted.Min(p => p.Rate);
        MostRate = Fitted.Max(p => p.Rate);
        Index = MakeIndex();
        Warnings = [.. FindWarnings()];
    }

    /// <summary>Every point, in the order read.</summary>
    public ImmutableArray<FlowPoint> Points { get; }

    /// <summary>The points that were fitted: those of the way down where there is a loop, else all.</summary>
    public ImmutableArray<FlowPoint> Fitted { get; }

    /// <summary>How much each point counted.</summary>
    public FlowWeights Weights { get; }

    /// <summary>The laws, heaviest first.</summary>
    public ImmutableArray<FlowFit> Fits { get; }

    /// <summary>The loop; null where the rates did not go up and down.</summary>
    public FlowLoop? Loop { get; }

    /// <summary>The least rate fitted.</summary>
    public ShearRate LeastRate { get; }

    /// <summary>The greatest rate fitted.</summary>
    public ShearRate MostRate { get; }

    /// <summary>The thinning index about the middle of the data; null where no law was fitted.</summary>
    public ThinningIndex? Index { get; }

    /// <summary>What a reader must know.</summary>
    public ImmutableArray<FlowWarning> Warnings { get; }

    /// <summary>Reads a curve.</summary>
    /// <param name="points">At least <see cref="FewestPoints"/>, in the order read.</param>
    /// <param name="weights">How much each counts.</param>
    /// <exception cref="ArgumentException">There are too few points.</exception>
    public static FlowCurve Of(ImmutableArray<FlowPoint> points, FlowWeights weights)
        => points.Length >= FewestPoints ? new(points, weights) : throw new ArgumentException("needs more points", nameof(points));

    /// <summary>
    /// The viscosity at a rate: the laws' mean in ln, each by its weight; spread by their scatter and by how far they disagree.
    /// </summary>
    /// <param name="rate">The rate.</param>
    /// <returns>Null where no law was fitted.</returns>
    public RateViscosity? At(NamedRate rate)
    {
        if (Estimate(rate.Rate.PerSecond) is not var (ln, sd))
        {
            return null;
        }

        var estimate = new Estimate(
            Viscosity.FromLn(ln), Viscosity.FromLn(ln - (Quantile * sd)), Viscosity.FromLn(ln + (Quantile * sd)), Level);
        return new(rate, estimate, rate.Rate < LeastRate || rate.Rate > MostRate);
    }

    /// <summary>Mean and standard deviation of ln viscosity (mPa·s) at a rate.</summary>
    private (double Ln, double Sd)? Estimate(double rate)
    {
        var parts = Fits.Where(f => f.Weight >= LeastWeight)
            .Select(f => (f.Weight, Stress: f.StressAt(ShearRate.FromPerSecond(rate)), Fit: f))
            .Where(p => p.Stress is not null)
            .Select(p => (p.Weight, Ln: Bounded(Math.Log(p.Stress!.Value.Pascals) + Math.Log(1000) - Math.Log(rate)),
                Variance: p.Fit.LnVarianceAt(rate)))
            .ToArray();
        if (parts.Length == 0)
        {
            return null;
        }

        var total = parts.Sum(p => p.Weight);
        var mean = parts.Sum(p => p.Weight * p.Ln) / total;
        var variance = parts.Sum(
            p => p.Weight * ((double.IsFinite(p.Variance) ? p.Variance : 0) + ((p.Ln - mean) * (p.Ln - mean)))) / total;
        return (mean, Math.Min(Math.Sqrt(variance), MostSd));
    }

    private static double Bounded(double ln) => Math.Clamp(ln, -MostLn, MostLn);

    private ThinningIndex? MakeIndex()
    {
        var (low, high) = (LeastRate.PerSecond, MostRate.PerSecond);
        var from = Math.Sqrt(low * high / 10);
        return Estimate(from) is var (slow, _) && Estimate(10 * from) is var (fast, _)
            ? new(Math.Exp(Bounded(slow - fast)), ShearRate.FromPerSecond(from), high < 10 * low * (1 - 1e-9))
            : null;
    }

    private IEnumerable<FlowWarning> FindWarnings()
    {
        if (FallingStress.From(Fitted) is { } rate)
        {
            yield return new FlowWarning.StressFalls(ShearRate.FromPerSecond(rate));
        }

        if (Loop is { } loop)
        {
            yield return Fitted.Length < Points.Length ? new FlowWarning.FittedToWayDown(loop) : new FlowWarning.FittedToBothWays();
        }

        if (MostRate.PerSecond < 10 * LeastRate.PerSecond)
        {
            yield return new FlowWarning.NarrowRates();
        }

        if (Fits.All(f => f.Aicc is null))
        {
            yield return new FlowWarning.TooFewToWeigh();
        }
    }
}
