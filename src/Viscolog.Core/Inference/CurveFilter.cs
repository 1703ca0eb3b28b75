using System.Runtime.InteropServices;
using MathNet.Numerics;
using Viscolog.Core.Curves;
using Viscolog.Core.Observing;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Inference;

/// <summary>
/// The likelihood of one curve. The settled body is level + rise of the shape, where the level is a random walk over dose that starts at
/// the
/// unthickened base: its variance grows by the square of the discrepancy for each usual range of dose. So a shape that is not quite right
/// costs little where
/// readings lie close, and the forecast grows unsure with the distance from the last dose. A scalar Kalman filter (Kalman, Journal of
/// Basic Engineering 82 (1960) 35–45) integrates the level out; a reading may be an outlier with a small chance and then moves the level
/// less.
/// </summary>
internal sealed class CurveFilter
{
    private readonly Nuisances _nuisances;
    private readonly double _levelMean;
    private readonly double _levelVariance;
    private readonly EvidenceStep[] _steps;
    private readonly int[] _byDose;
    private readonly double[] _lastWait;
    private readonly double[] _rise;
    private readonly double[] _start;
    private readonly int _readingCount;

    public CurveFilter(Evidence evidence, double rangeTop, Prior prior)
    {
        _steps = [.. evidence.Steps.Select(InOrderOfCloseness)];
        _nuisances = new(evidence);
        (_levelMean, _levelVariance) = (prior.LevelMean, prior.LevelSd * prior.LevelSd);
        Doses = [.. _steps.Select(s => s.Dose / rangeTop)];
        _byDose = [.. Enumerable.Range(0, _steps.Length).OrderBy(k => Doses[k])];
        _lastWait = [.. _steps.Select(s => s.Readings.Length == 0 ? double.PositiveInfinity : s.Readings.Max(r => r.LogWait))];
        _rise = new double[_steps.Length];
        _start = new double[_steps.Length];
        _readingCount = _steps.Sum(s => s.Readings.Length);
        SortedDoses = [.. _byDose.Select(k => Doses[k])];
    }

    /// <summary>Doses over the range top in order of time.</summary>
    public double[] Doses { get; }

    /// <summary>The same in rising order.</summary>
    public double[] SortedDoses { get; }

    /// <summary>Evaluates the shape at every step and where each step's build-up starts.</summary>
    /// <param name="shape">The shape.</param>
    /// <param name="logParameters">The logarithms of its parameters.</param>
    /// <param name="kinetics">The build-up.</param>
    public void Prepare(Shape shape, ReadOnlySpan<double> logParameters, Kinetics kinetics)
    {
        Span<double> parameters = stackalloc double[logParameters.Length];
        Shape.Exponentiate(logParameters, parameters);
        for (var k = 0; k < _steps.Length; k++)
        {
            _rise[k] = shape.RiseOf(parameters, Doses[k]);
            _start[k] = k == 0
                ? _rise[0]
                : _rise[k - 1] + ((_start[k - 1] - _rise[k - 1]) * kinetics.RemainingAt(_lastWait[k - 1]));
        }
    }

    /// <summary>Change of each step from its start to its settled value, in ln units; after <see cref="Prepare"/>.</summary>
    public double[] Changes() => [.. _rise.Zip(_start, (rise, start) => rise - start)];

    /// <summary>The log likelihood of a draw; negative infinity where it is sure to lie below the least of interest.</summary>
    public double LogLikelihood(Shape shape, CurveParameters draw, double least) => LogLikelihood(shape, draw, default, default, least);

    /// <summary>Rise that a step shows after standing for a time; after <see cref="Prepare"/>.</summary>
    public double RiseAfter(int step, double logWait, Kinetics kinetics)
        => step == 0 ? _rise[0] : _rise[step] + ((_start[step] - _rise[step]) * kinetics.RemainingAt(logWait));

    /// <summary>What all readings share, of a draw.</summary>
    public Nuisance NuisanceOf(CurveParameters draw) => _nuisances.At(draw.Nuisance);

    /// <summary>The log likelihood of a draw, with the level that it leaves.</summary>
    /// <param name="shape">The shape.</param>
    /// <param name="draw">Its parameters.</param>
    /// <param name="means">Takes the level's filtered mean after each step, in rising order of dose; empty where not wanted.</param>
    /// <param name="variances">Takes its variance.</param>
    /// <param name="least">The log likelihood below which a draw is of no interest and need not be followed to its end.</param>
    /// <returns>The log likelihood up to a constant; negative infinity where the curve is not finite.</returns>
    public double LogLikelihood(
        Shape shape, CurveParameters draw, Span<double> means, Span<double> variances, double least = double.NegativeInfinity)
    {
        var (kinetics, repeatability, coefficientOff) = _nuisances.ForLikelihood(draw.Nuisance);
        Prepare(shape, draw.LogShape, kinetics);
        var walk = draw.Discrepancy * draw.Discrepancy;
        var (mean, variance) = (_levelMean, _levelVariance + (walk * SortedDoses[0]));
        var likelihood = new LogProduct();
        var (left, greatest) = (_readingCount, -Math.Log(repeatability));
        for (var i = 0; i < _byDose.Length; i++)
        {
            var k = _byDose[i];
            variance += i == 0 ? 0 : walk * (SortedDoses[i] - SortedDoses[i - 1]);
            var before = k == 0 ? 0 : walk * Math.Abs(Doses[k] - Doses[k - 1]);
            foreach (var reading in _steps[k].Readings)
            {
                var remaining = k == 0 ? 0 : kinetics.RemainingAt(reading.LogWait);
                var expected = _rise[k] + ((_start[k] - _rise[k]) * remaining);
                var noise = (repeatability * repeatability) + reading.ExtraVariance + (remaining * remaining * before);
                likelihood.Times(Update(reading.Ln + (coefficientOff * reading.Distance) - expected - mean, noise, ref mean, ref variance));
            }

            if (!means.IsEmpty)
            {
                (means[i], variances[i]) = (mean, variance);
            }

            // No reading's density is above that of one on the spot, so what is left can't make up for more than this.
            left -= _steps[k].Readings.Length;
            if (left > 0 && likelihood.IsWorthALook && likelihood.Log + (left * greatest) < least)
            {
                return double.NegativeInfinity;
            }
        }

        return likelihood.Log;
    }

    /// <summary>The chance that a reading is an outlier, given how far off it is.</summary>
    public static double OutlierChance(double deviation, double variance)
    {
        var (good, outlier) = Densities(deviation, variance);
        return outlier / (good + outlier);
    }

    /// <summary>
    /// A reading that may be an outlier counts with its noise widened, up to that of an outlier, and without end where it may be a blunder,
    /// by how much likelier an outlier it is than one on the spot would be; so a single reading that fits loses nothing.
    /// </summary>
    /// <returns>The density of the reading, up to a constant.</returns>
    private static double Update(double innovation, double noise, ref double mean, ref double variance)
    {
        var (density, counted) = RobustDensity(innovation, variance, noise);
        var gain = variance / (variance + counted);
        mean += gain * innovation;
        variance -= gain * variance;
        return density;
    }

    /// <summary>The density of a reading that may be an outlier, and the noise that it counts with.</summary>
    public static (double Density, double Noise) RobustDensity(double innovation, double variance, double noise)
    {
        var spread = variance + noise;
        var wide = spread + (PosteriorSettings.OutlierSd * PosteriorSettings.OutlierSd);
        var (rootSpread, rootWide) = (Math.Sqrt(spread), Math.Sqrt(wide));
        var squared = innovation * innovation;
        var good = (1 - PosteriorSettings.OutlierShare) * Math.Exp(-0.5 * squared / spread) / rootSpread;
        var blunder = Blunder(squared);
        var density = good + blunder + (PosteriorSettings.OutlierShare * Math.Exp(-0.5 * squared / wide) / rootWide);
        var atBest = ((PosteriorSettings.OutlierShare / rootWide) + Blunder(0)) * rootSpread / (1 - PosteriorSettings.OutlierShare);
        var trust = density > 0 ? good / density * (1 + atBest) : 0;
        var widest = (noise + (PosteriorSettings.OutlierSd * PosteriorSettings.OutlierSd)) * density / (density - blunder);
        return (density, trust * widest > noise ? noise / trust : widest);
    }

    /// <summary>Density of a blunder, on the scale of the others (without the constant of the normal distribution).</summary>
    private static double Blunder(double squared)
    {
        const double height = PosteriorSettings.BlunderShare * Constants.Sqrt2Pi / (Math.PI * PosteriorSettings.BlunderScale);
        return height / (1 + (squared / (PosteriorSettings.BlunderScale * PosteriorSettings.BlunderScale)));
    }

    /// <summary>
    /// The reading nearest the step's middle first, so that one outlier can't set the level that the others are judged by.
    /// </summary>
    private static EvidenceStep InOrderOfCloseness(EvidenceStep step)
    {
        if (step.Readings.Length < 3)
        {
            return step;
        }

        var middle = step.Readings.Select(r => r.Ln).Order().ElementAt(step.Readings.Length / 2);
        return step with { Readings = [.. step.Readings.OrderBy(r => Math.Abs(r.Ln - middle))] };
    }

    private static (double Good, double Outlier) Densities(double deviation, double variance)
    {
        var wide = variance + (PosteriorSettings.OutlierSd * PosteriorSettings.OutlierSd);
        var squared = deviation * deviation;
        return (
            (1 - PosteriorSettings.OutlierShare) * Math.Exp(-0.5 * squared / variance) / Math.Sqrt(variance),
            Blunder(squared) + (PosteriorSettings.OutlierShare * Math.Exp(-0.5 * squared / wide) / Math.Sqrt(wide)));
    }
}

/// <summary>A product of many densities that never runs out of range; logarithms are slow, so one is taken now and then only.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct LogProduct
{
    private const int LookEvery = 16;

    private double _sum;
    private double _product;
    private int _factors;

    public LogProduct() => _product = 1;

    /// <summary>The product's logarithm; negative infinity where it is not finite.</summary>
    public readonly double Log => _sum + Math.Log(_product) is var log && double.IsFinite(log) ? log : double.NegativeInfinity;

    /// <summary>Whether so many factors were taken in since this was asked last that the logarithm costs little beside them.</summary>
    public bool IsWorthALook
    {
        get
        {
            var isWorth = _factors >= LookEvery;
            _factors = isWorth ? 0 : _factors;
            return isWorth;
        }
    }

    /// <summary>Takes in a factor.</summary>
    public void Times(double density)
    {
        _factors++;
        _product *= density;
        if (_product is < 1e-200 or > 1e200)
        {
            _sum += Math.Log(_product);
            _product = 1;
        }
    }
}
