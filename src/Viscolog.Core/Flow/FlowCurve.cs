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

    private FlowCurve(ImmutableArray<FlowPoint> all, FlowWeights weights, GapProfile? gap)
    {
        Weights = weights;
        Take(all);
        Fits = FlowFits.Of(Fitted, weights, gap);
        if (gap is not null && Fits.Any(f => f.Parameters.Length > 1))
        {
            Take([.. all.Select(p => p with { Rate = RateAtBob(p, gap) })]);
        }
        else if (gap is not null)
        {
            // Torques that no law can turn, such as falling ones, are judged by their rates at first sight.
            Fits = FlowFits.Of(Fitted, weights);
        }

        LeastRate = Fitted.Min(p => p.Rate);
        MostRate = Fitted.Max(p => p.Rate);
        Index = MakeIndex();
        Warnings = [.. FindWarnings()];
    }

    /// <summary>Every point, in the order read.</summary>
    public ImmutableArray<FlowPoint> Points { get; private set; }

    /// <summary>The points that were fitted: those of the way down where there is a loop, else all.</summary>
    public ImmutableArray<FlowPoint> Fitted { get; private set; }

    /// <summary>How much each point counted.</summary>
    public FlowWeights Weights { get; }

    /// <summary>The laws, heaviest first.</summary>
    public ImmutableArray<FlowFit> Fits { get; }

    /// <summary>The loop; null where the rates did not go up and down.</summary>
    public FlowLoop? Loop { get; private set; }

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
        => Of(points, weights, null);

    /// <summary>
    /// Reads a curve of speeds and torques; between cylinders each law is fitted through its own profile of shear across the gap.
    /// </summary>
    /// <param name="series">At least <see cref="FewestPoints"/> readings, in the order read.</param>
    /// <param name="weights">How much each counts.</param>
    /// <exception cref="ArgumentException">There are too few readings.</exception>
    public static FlowCurve Of(TorqueSeries series, FlowWeights weights)
    {
        ArgumentNullException.ThrowIfNull(series);
        return Of(series.ToPoints(), weights, series.Gap);
    }

    private static FlowCurve Of(ImmutableArray<FlowPoint> points, FlowWeights weights, GapProfile? gap)
        => points.Length >= FewestPoints ? new(points, weights, gap) : throw new ArgumentException("needs more points", nameof(points));

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
                Variance: p.Fit.LnVarianceAt(rate) * Widening(p.Fit)))
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

    /// <summary>
    /// What a variance is multiplied by so that the normal interval is as wide as Student's: few points tell their scatter poorly.
    /// </summary>
    private static double Widening(FlowFit fit) => fit.Fit!.DegreesOfFreedom is > 0 and var freedom
        ? Math.Pow(StudentT.InvCDF(0, 1, freedom, (1 + Level.Fraction) / 2) / Quantile, 2) : 1;

    private void Take(ImmutableArray<FlowPoint> points)
    {
        (Points, Loop) = (points, FlowLoop.Find(points));
        Fitted = Loop is { Down.Length: >= EnoughDown } ? Loop.Down : points;
    }

    /// <summary>The laws' mean of the rate at the bob, in ln; as at first sight where none was weighed.</summary>
    private ShearRate RateAtBob(FlowPoint point, GapProfile gap)
    {
        var (first, sum, total) = (point.Rate.PerSecond, 0.0, 0.0);
        foreach (var fit in Fits.Where(f => f.Weight >= LeastWeight))
        {
            var rate = gap.RateAtBob(fit.Fitted, [.. fit.Fit!.Parameters], point.Turning!.Value, first);
            (sum, total) = double.IsFinite(rate) ? (sum + (fit.Weight * Math.Log(rate)), total + fit.Weight) : (sum, total);
        }

        return total > 0 ? ShearRate.FromPerSecond(Math.Exp(sum / total)) : point.Rate;
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
