using System.Collections.Immutable;
using Viscolog.Core.Fitting;

namespace Viscolog.Core.Flow;

/// <summary>One law on one flow curve: residuals in Pa, or in parts of the stress.</summary>
internal sealed class FlowProblem(FlowModel model, ImmutableArray<FlowPoint> points, FlowWeights weights)
    : ResidualProblem(model.Quantities.Length, points.Length)
{
    /// <inheritdoc/>
    public override void Residuals(ReadOnlySpan<double> parameters, Span<double> residuals)
    {
        for (var i = 0; i < points.Length; i++)
        {
            var (rate, stress) = (points[i].Rate.PerSecond, points[i].Stress.Pascals);
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
