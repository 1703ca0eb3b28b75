using System.Collections.Immutable;
using Viscolog.Core.Fitting;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Flow;

/// <summary>One law fitted to a flow curve.</summary>
/// <param name="Model">The law.</param>
/// <param name="Parameters">Its parameters; empty where there is no fit.</param>
/// <param name="ResidualSumOfSquares">In Pa², or in parts of the stress squared with relative weights; null where there is no fit.</param>
/// <param name="Aicc">
/// n·ln(RSS/n) + 2k + 2k(k + 1)/(n − k − 1), k with the scatter counted (Hurvich and Tsai, Biometrika 76 (1989) 297); null with too few
/// points.
/// </param>
/// <param name="Trouble">Why there is no fit; null where there is one.</param>
public sealed record FlowFit(
    FlowModel Model, ImmutableArray<FlowParameter> Parameters, double? ResidualSumOfSquares, double? Aicc, FlowTrouble? Trouble)
{
    /// <summary>
    /// The law's share among those fitted: exp(−ΔAICc/2), all together 1 (Burnham and Anderson 2002; from memory); 0 without
    /// <see cref="Aicc"/>.
    /// </summary>
    public double Weight { get; init; }

    internal FitOutcome.Converged? Fit { get; init; }

    /// <summary>The law that was fitted in the end: <see cref="Model"/>, or it without its last plateau.</summary>
    internal FlowModel Fitted { get; init; } = Model;

    /// <summary>Stress at a rate; null where there is no fit or the law gives none above 0.</summary>
    /// <param name="rate">The rate.</param>
    public Stress? StressAt(ShearRate rate)
    {
        var pascals = Fit is null ? 0 : Fitted.Stress(rate.PerSecond, [.. Fit.Parameters]);
        return pascals > 0 && double.IsFinite(pascals) ? Stress.FromPascals(pascals) : null;
    }

    /// <summary>Variance of ln stress at a rate, by the delta method; not a number where nothing tells it.</summary>
    internal double LnVarianceAt(double rate)
    {
        double[] theta = [.. Fit!.Parameters];
        var gradient = new double[theta.Length];
        for (var j = 0; j < theta.Length; j++)
        {
            var (step, kept) = (1e-5 * Math.Max(1, Math.Abs(theta[j])), theta[j]);
            theta[j] = kept + step;
            var up = Math.Log(Fitted.Stress(rate, theta));
            theta[j] = kept - step;
            gradient[j] = (up - Math.Log(Fitted.Stress(rate, theta))) / (2 * step);
            theta[j] = kept;
        }

        return Fit.Covariance.VarianceOf(gradient);
    }
}
