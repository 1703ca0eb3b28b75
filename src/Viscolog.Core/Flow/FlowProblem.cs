using System.Collections.Immutable;
using Viscolog.Core.Fitting;

namespace Viscolog.Core.Flow;

/// <summary>One law on one flow curve: residuals in Pa, or in parts of the stress.</summary>
/// <param name="model">The law.</param>
/// <param name="points">The points.</param>
/// <param name="weights">How much each counts.</param>
/// <param name="gap">The gap in which they were read, each at its own speed; null where their rates hold for any law.</param>
internal sealed class FlowProblem(FlowModel model, ImmutableArray<FlowPoint> points, FlowWeights weights, GapProfile? gap)
    : ResidualProblem(model.Quantities.Length, points.Length)
{
    /// <summary>The rates found last: the next are near.</summary>
    private readonly double[] _rates = [.. points.Select(p => p.Rate.PerSecond)];

    /// <inheritdoc/>
    public override void Residuals(ReadOnlySpan<double> parameters, Span<double> residuals)
    {
        for (var i = 0; i < points.Length; i++)
        {
            var (rate, stress) = (points[i].Rate.PerSecond, points[i].Stress.Pascals);
            if (gap is not null)
            {
                rate = gap.RateAtBob(model, parameters, points[i].Turning!.Value, _rates[i]);
                _rates[i] = double.IsFinite(rate) ? rate : points[i].Rate.PerSecond;
            }

            residuals[i] = (model.Stress(rate, parameters) - stress) / (weights == FlowWeights.Relative ? stress : 1);
        }
    }

    /// <summary>The best of the model's starts.</summary>
    public double[] Start()
    {
        var residuals = new double[DataCount];
        return model.Starts(new(points)).MinBy(start =>
        {
            Residuals(start, residuals);
            var sum = residuals.Sum(r => r * r);
            return double.IsFinite(sum) ? sum : double.MaxValue;
        })!;
    }
}
