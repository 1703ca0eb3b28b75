using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using Viscolog.Core.Curves;
using Viscolog.Core.Fitting;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Inference;

/// <summary>Fits every shape to a run by <see cref="LeastSquares"/> under the weak priors: the report of <c>fit</c>.</summary>
public static class ShapeFits
{
    /// <summary>Part of the prior's standard deviation from which on the prior decides (a rule of this project).</summary>
    private const double PriorPart = 0.8;

    /// <summary>Fits.</summary>
    /// <param name="posterior">The posterior, which gives the weights.</param>
    /// <returns>One fit for each of <see cref="Shapes.All"/>, heaviest first.</returns>
    public static ImmutableArray<ShapeFit> Of(Posterior posterior)
        => [.. Shapes.All.Select((shape, s) => Fit(posterior, shape, posterior.ShapeWeights[s])).OrderByDescending(f => f.Weight)];

    private static ShapeFit Fit(Posterior posterior, Shape shape, double weight)
    {
        var problem = ShapeProblem.Of(posterior, shape);
        var options = new FitOptions { StartWidths = problem.Spreads, ExtraStarts = 4 };
        return LeastSquares.Fit(problem, problem.Start, options) switch
        {
            FitOutcome.Converged fit => Report(posterior, shape, weight, problem, fit),
            FitOutcome.NotConverged fit => new(
                shape, weight, Parameters(posterior, shape, problem, fit.Best, null), null, null, null, fit.Reason),
            FitOutcome.Impossible fit => new(shape, weight, [], null, null, null, fit.Reason),
            var other => throw new ArgumentOutOfRangeException(nameof(posterior), other, "not a case of the closed set"),
        };
    }

    private static ShapeFit Report(Posterior posterior, Shape shape, double weight, ShapeProblem problem, FitOutcome.Converged fit)
    {
        var (data, count) = (problem.DataCount, problem.ParameterCount);
        double? aicc = data - count - 1 > 0
            ? fit.ResidualSumOfSquares + (2.0 * count) + (2.0 * count * (count + 1) / (data - count - 1))
            : null;
        var repeatability = posterior.Repeatability * fit.ResidualStandardDeviation;
        var parameters = Parameters(posterior, shape, problem, fit.Parameters, fit.StandardErrors);
        return new(shape, weight, parameters, aicc, repeatability, LackOfFit(posterior, problem, fit), null);
    }

    private static ImmutableArray<FittedParameter> Parameters(
        Posterior posterior, Shape shape, ShapeProblem problem, IReadOnlyList<double> values, IReadOnlyList<double>? errors)
    {
        var top = posterior.Evidence.RangeTop;
        var fitted = ImmutableArray.CreateBuilder<FittedParameter>();
        fitted.Add(Parameter("base", "mPa·s", ShapeProblem.BasePlace, 1));
        for (var j = 0; j < shape.Parameters.Length; j++)
        {
            var parameter = shape.Parameters[j];
            var (unit, scale) = parameter.Unit == "R" ? ("%", top) : (parameter.Unit, 1);
            fitted.Add(Parameter(parameter.Name, unit, ShapeProblem.PlaceOf(j), scale));
        }

        if (problem.BuildsUp)
        {
            fitted.Add(Parameter("time constant", "s", problem.TimeConstantPlace, 1));
        }

        return fitted.ToImmutable();

        FittedParameter Parameter(string name, string unit, int j, double scale)
        {
            var value = Math.Exp(values[j]) * scale;
            return errors is null
                ? new(name, unit, value, null, false)
                : new(name, unit, value, value * errors[j], errors[j] > PriorPart * problem.Spreads[j]);
        }
    }

    /// <summary>
    /// The F test of lack of fit against pure error (Draper and Smith, Applied Regression Analysis, 3rd edition, Wiley 1998, section 2.1;
    /// from
    /// memory) over settled readings repeated within a step.
    /// </summary>
    private static double? LackOfFit(Posterior posterior, ShapeProblem problem, FitOutcome.Converged fit)
    {
        var kinetics = problem.KineticsOf([.. fit.Parameters]);
        var groups = posterior.Evidence.Steps
            .Select(s => s.Readings.Where(r => s.Place == 0 || kinetics.Remaining(r.WaitSeconds) < Settled.Part)
                .Select(r => r.Ln).ToArray())
            .Where(g => g.Length > 1)
            .ToArray();
        var pureFreedom = groups.Sum(g => g.Length - 1);
        var misfitFreedom = fit.DegreesOfFreedom - pureFreedom;
        if (pureFreedom < 1 || misfitFreedom < 1)
        {
            return null;
        }

        var variance = posterior.Repeatability * posterior.Repeatability;
        var pure = groups.Sum(g => g.Sum(y => (y - g.Average()) * (y - g.Average()))) / variance;
        var misfit = Math.Max(0, fit.ResidualSumOfSquares - pure);
        return pure > 0 ? 1 - FisherSnedecor.CDF(misfitFreedom, pureFreedom, misfit / misfitFreedom / (pure / pureFreedom)) : null;
    }
}

/// <summary>One shape fitted to a run by least squares under the weak priors.</summary>
/// <param name="Shape">The shape.</param>
/// <param name="Weight">Its weight in the posterior, 0 to 1.</param>
/// <param name="Parameters">The base's body, the shape's parameters and, where waits were logged, the time constant.</param>
/// <param name="Aicc">Akaike's criterion with the small-sample correction (Hurvich and Tsai, Biometrika 76 (1989) 297–307), the
/// repeatability taken as known; null with too few readings.</param>
/// <param name="ResidualRepeatability">Relative standard deviation of the readings about the curve, as a fraction; null without degrees of
/// freedom.</param>
/// <param name="LackOfFitChance">p of the lack-of-fit test against repeat readings; null where there are none.</param>
/// <param name="Trouble">Why the fit is not to be trusted; null where it is.</param>
public sealed record ShapeFit(
    Shape Shape,
    double Weight,
    ImmutableArray<FittedParameter> Parameters,
    double? Aicc,
    double? ResidualRepeatability,
    double? LackOfFitChance,
    string? Trouble);
