using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using Viscolog.Core.Curves;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;
using Viscolog.Core.Sampling;

namespace Viscolog.Core.Inference;

/// <summary>
/// Curves of one thickener drawn for the readings of a run: shapes, parameters, time constant and discrepancy by population Monte Carlo,
/// the
/// level along the doses by the filter. Deterministic.
/// </summary>
internal sealed class SampledCurves
{
    /// <summary>A draw so far below its shape's likeliest, in ln of weight, counts for nothing.</summary>
    private const double NegligibleBelow = 14;

    /// <summary>A shape under this weight says nothing that can be pooled.</summary>
    private const double LeastShapeWeight = 0.01;

    /// <summary>Doses over the range top at which a curve is looked at for whether it comes up to the aim.</summary>
    private static readonly ImmutableArray<double> LookedAt = [0.3, 0.5, 0.7, 0.85, 1, Posterior.SoughtUpTo];

    private readonly Prior _prior;
    private readonly WeightedSample[] _samples;

    /// <summary>Draws.</summary>
    /// <param name="evidence">The run's evidence.</param>
    /// <param name="rangeTop">The dose in % that counts as 1: the top of the usual range in force.</param>
    /// <param name="prior">What is known before the readings.</param>
    /// <param name="target">The band aimed at; null where there is none. Curves that never come near it count for less.</param>
    /// <param name="effort">How many draws and rounds.</param>
    public SampledCurves(Evidence evidence, double rangeTop, Prior prior, ViscosityBand? target, SamplingEffort effort)
    {
        _prior = prior;
        var filter = new CurveFilter(evidence, rangeTop, prior);
        _samples = new PopulationMonteCarlo(effort).Draw([.. Shapes.All.Select((shape, place) => new SampledFamily(
            CurveParameters.Count(shape),
            prior.Mixtures[place],
            () =>
            {
                var own = new CurveFilter(evidence, rangeTop, prior);
                return (row, least) => own.LogLikelihood(shape, new(row), least);
            },
            104729 * place))]);
        if (target is not null)
        {
            DiscountUnusual(filter, evidence.Thickener.UsualRange.Low.Percent / rangeTop, target.Aim.Ln);
        }

        (ShapeWeights, LogEvidence) = Resampling.Weigh(
            [.. _samples.Select((d, s) => d.LogMeanWeight() + Math.Log(prior.Mixtures[s].Total))]);
        Draws = Resampling.Of(_samples, ShapeWeights, effort.Kept, (s, row) => new CurveDraw(s, new(row), filter));
    }

    /// <summary>The weight of each of <see cref="Shapes.All"/>; they sum to 1.</summary>
    public ImmutableArray<double> ShapeWeights { get; }

    /// <summary>How likely the readings are under the prior, as a logarithm up to a constant of the readings alone.</summary>
    public double LogEvidence { get; }

    /// <summary>Draws of the curve, equally likely.</summary>
    public ImmutableArray<CurveDraw> Draws { get; }

    /// <summary>The chance that this pot is unlike all its earlier runs, from 0 to 1; 0 without any.</summary>
    public double ChanceUnlikeHistory()
    {
        if (_prior.Runs == 0)
        {
            return 0;
        }

        var sum = 0.0;
        for (var s = 0; s < _samples.Length; s++)
        {
            var weights = _samples[s].Weights();
            for (var i = 0; i < weights.Length; i++)
            {
                sum += weights[i] > 1e-9 ? weights[i] * ShapeWeights[s] * _prior.Mixtures[s].PartOfFirst(_samples[s].Row(i)) : 0;
            }
        }

        return Math.Clamp(sum, 0, 1);
    }

    /// <summary>The moments of each shape's parameters; null for a shape that has next to no weight.</summary>
    public ImmutableArray<ShapeMoments?> Moments() => [.. _samples.Select((sample, s) =>
    {
        if (ShapeWeights[s] < LeastShapeWeight)
        {
            return null;
        }

        var (mean, covariance) = sample.Moments();
        return new ShapeMoments(ShapeWeights[s], mean, covariance);
    })];

    private void DiscountUnusual(CurveFilter filter, double low, double aim)
    {
        var noneIn = filter.SortedDoses[^1] <= 0;
        var means = new double[filter.Doses.Length];
        var variances = new double[filter.Doses.Length];
        for (var s = 0; s < _samples.Length; s++)
        {
            var shape = Shapes.All[s];
            var logWeights = _samples[s].LogWeights;
            var least = logWeights.Max() - NegligibleBelow;
            for (var i = 0; i < logWeights.Length; i++)
            {
                if (!(logWeights[i] > least))
                {
                    continue;
                }

                var draw = new CurveParameters(_samples[s].Row(i));
                filter.LogLikelihood(shape, draw, means, variances);
                logWeights[i] += !Reaches(shape, draw.LogShape, means[^1], aim) ? Math.Log(PosteriorSettings.UnreachingWeight)
                    : noneIn && means[^1] + shape.Rise(draw.LogShape, low) > aim ? Math.Log(PosteriorSettings.BelowRangeWeight) : 0;
            }
        }
    }

    private static bool Reaches(Shape shape, ReadOnlySpan<double> logParameters, double level, double aim)
    {
        foreach (var place in LookedAt)
        {
            if (level + shape.Rise(logParameters, place) >= aim)
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>What the draws say of one shape: its weight and the moments of its parameters.</summary>
/// <param name="Weight">The shape's weight, 0 to 1.</param>
/// <param name="Mean">Mean of a row.</param>
/// <param name="Covariance">Its covariance.</param>
internal sealed record ShapeMoments(double Weight, double[] Mean, Matrix<double> Covariance);
