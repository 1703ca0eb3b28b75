using System.Collections.Immutable;
using MathNet.Numerics.Distributions;

namespace Viscolog.Core.Curves;

/// <summary>Fits every shape to a run by <see cref="LeastSquares"/> under the weak priors: the report of <c>fit</c>.</summary>
public static class ShapeFits
{
    /// <summary>Part of the prior's standard deviation from which on the prior decides (a rule of this project).</summary>
    private const double PriorPart = 0.8;

    /// <summary>Fits.</summary>
    /// <param name="belief">The belief, which gives the weights.</param>
    /// <returns>One fit for each of <see cref="Shapes.All"/>, heaviest first.</returns>
    public static ImmutableArray<ShapeFit> Of(Belief belief)
        => [.. Shapes.All.Select((shape, s) => Fit(belief, shape, belief.ShapeWeights[s])).OrderByDescending(f => f.Weight)];

    private static ShapeFit Fit(Belief belief, Shape shape, double weight)
    {
        var problem = ShapeProblem.Of(belief, shape);
        var options = new FitOptions { StartWidths = problem.Spreads, ExtraStarts = 4 };
        return LeastSquares.Fit(problem, problem.Start, options) switch
        {
            FitOutcome.Converged fit => Report(belief, shape, weight, problem, fit),
            FitOutcome.NotConverged fit => new(shape, weight, Parameters(belief, shape, problem, fit.Best, null), null, null, null, fit.Reason),
            FitOutcome.Impossible fit => new(shape, weight, [], null, null, null, fit.Reason),
            var other => throw new ArgumentOutOfRangeException(nameof(belief), other, "not a case of the closed set"),
        };
    }

    private static ShapeFit Report(Belief belief, Shape shape, double weight, ShapeProblem problem, FitOutcome.Converged fit)
    {
        var (data, count) = (problem.DataCount, problem.ParameterCount);
        double? aicc = data - count - 1 > 0
            ? fit.ResidualSumOfSquares + (2.0 * count) + (2.0 * count * (count + 1) / (data - count - 1))
            : null;
        double? repeatability = fit.DegreesOfFreedom > 0
            ? belief.Evidence.Repeatability * Math.Sqrt(fit.ResidualSumOfSquares / fit.DegreesOfFreedom)
            : null;
        return new(shape, weight, Parameters(belief, shape, problem, fit.Parameters, fit.StandardErrors), aicc, repeatability, LackOfFit(belief, problem, fit), null);
    }

    private static ImmutableArray<FittedParameter> Parameters(
        Belief belief, Shape shape, ShapeProblem problem, IReadOnlyList<double> values, IReadOnlyList<double>? errors)
    {
        var top = belief.Evidence.RangeTop;
        var fitted = ImmutableArray.CreateBuilder<FittedParameter>();
        fitted.Add(Parameter("base", "mPa·s", 0, 1));
        for (var j = 0; j < shape.Parameters.Length; j++)
        {
            var parameter = shape.Parameters[j];
            fitted.Add(parameter.Unit == "R" ? Parameter(parameter.Name, "%", j + 1, top) : Parameter(parameter.Name, parameter.Unit, j + 1, 1));
        }

        if (problem.BuildsUp)
        {
            fitted.Add(Parameter("time constant", "s", values.Count - 1, 1));
        }

        return fitted.ToImmutable();

        FittedParameter Parameter(string name, string unit, int j, double scale)
        {
            var value = Math.Exp(values[j]) * scale;
            return new(name, unit, value, errors is null ? null : value * errors[j], errors is not null && errors[j] > PriorPart * problem.Spreads[j]);
        }
    }

    /// <summary>
    /// The F test of lack of fit against pure error (Draper and Smith, Applied Regression Analysis, 3rd edition, Wiley 1998, section 2.1; from
    /// memory) over settled readings repeated within a step.
    /// </summary>
    private static double? LackOfFit(Belief belief, ShapeProblem problem, FitOutcome.Converged fit)
    {
        const double settled = 0.02;
        var timeConstant = problem.BuildsUp ? Math.Exp(fit.Parameters[^1]) : 1;
        var groups = belief.Evidence.Steps
            .Select(s => s.Readings.Where(r => s.Place == 0 || Settling.BuildUp.Remaining(r.WaitSeconds, timeConstant) < settled).Select(r => r.Ln).ToArray())
            .Where(g => g.Length > 1)
            .ToArray();
        var pureFreedom = groups.Sum(g => g.Length - 1);
        var misfitFreedom = fit.DegreesOfFreedom - pureFreedom;
        if (pureFreedom < 1 || misfitFreedom < 1)
        {
            return null;
        }

        var variance = belief.Evidence.Repeatability * belief.Evidence.Repeatability;
        var pure = groups.Sum(g => g.Sum(y => (y - g.Average()) * (y - g.Average()))) / variance;
        var misfit = Math.Max(0, fit.ResidualSumOfSquares - pure);
        return pure > 0 ? 1 - FisherSnedecor.CDF(misfitFreedom, pureFreedom, misfit / misfitFreedom / (pure / pureFreedom)) : null;
    }
}
