using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using Viscolog.Core.Fitting;

namespace Viscolog.Core.Flow;

/// <summary>Fits every law to a flow curve.</summary>
public static class FlowFits
{
    /// <summary>
    /// Below so many standard errors a yield stress or last plateau does not differ significantly from 0 (a rule of this project).
    /// </summary>
    private const double Significant = 2;

    /// <summary>Standard errors up to the value that 95 % lie below.</summary>
    private static readonly double OneSided = Normal.InvCDF(0, 1, 0.95);

    /// <summary>The least relative scatter that counts; exact numbers would make ln RSS run away.</summary>
    private const double LeastScatter = 1e-9;

    /// <summary>
    /// Evaluations of a law at one point, over all starts, before a fit is given up: a law that the data do not show would search on for
    /// long.
    /// </summary>
    private const int MostWork = 600_000;

    private const int FewestEvaluations = 400;

    private const int MostEvaluations = 20_000;

    /// <summary>Fits.</summary>
    /// <param name="points">The points; at least 1.</param>
    /// <param name="weights">How much each counts.</param>
    /// <returns>One fit for each of <see cref="FlowModel.All"/>, heaviest first.</returns>
    /// <exception cref="ArgumentException">There are no points.</exception>
    public static ImmutableArray<FlowFit> Of(ImmutableArray<FlowPoint> points, FlowWeights weights)
    {
        if (points.IsDefaultOrEmpty)
        {
            throw new ArgumentException("needs points", nameof(points));
        }

        FlowFit[] fits = [.. FlowModel.All.Select(m => Fit(m, points, weights))];
        var least = fits.Min(f => f.Aicc) ?? 0;
        var total = fits.Sum(f => f.Aicc is { } a ? Math.Exp((least - a) / 2) : 0);
        return [.. fits.Select(f => f with { Weight = f.Aicc is { } a ? Math.Exp((least - a) / 2) / total : 0 })
            .OrderByDescending(f => f.Weight)];
    }

    private static FlowFit Fit(FlowModel model, ImmutableArray<FlowPoint> points, FlowWeights weights)
    {
        if (points.Length <= model.Quantities.Length)
        {
            return Failed(model, new FlowTrouble.TooFewPoints(points.Length, model.Quantities.Length));
        }

        var outcome = Solve(model, points, weights);
        if (model.Reduced is { } reduced && (outcome is not FitOutcome.Converged full || !IsShown(full, model.Quantities.Length - 1)))
        {
            return Solve(reduced, points, weights) is FitOutcome.Converged less
                ? WithLimit(Report(model, reduced, less, points, weights), outcome as FitOutcome.Converged)
                : Failed(model, new FlowTrouble.NoPlateaus());
        }

        return outcome is FitOutcome.Converged converged
            ? Report(model, model, converged, points, weights)
            : Failed(model, new FlowTrouble.Undetermined());
    }

    private static FitOutcome Solve(FlowModel model, ImmutableArray<FlowPoint> points, FlowWeights weights)
    {
        var problem = new FlowProblem(model, points, weights);
        return LeastSquares.Fit(problem, problem.Start(), new FitOptions
        {
            StartWidths = [.. model.Quantities.Select(_ => 1.0)],
            MaximumEvaluations = Math.Clamp(MostWork / points.Length, FewestEvaluations, MostEvaluations),
        });
    }

    private static FlowFit Failed(FlowModel model, FlowTrouble why) => new(model, [], null, null, why);

    private static bool IsShown(FitOutcome.Converged fit, int place)
        => fit.StandardErrors is { } errors && fit.Parameters[place] > Significant * errors[place];

    private static FlowFit Report(
        FlowModel model, FlowModel fitted, FitOutcome.Converged fit, ImmutableArray<FlowPoint> points, FlowWeights weights)
    {
        var (n, k) = (points.Length, fitted.Quantities.Length + 1);
        var unit = weights == FlowWeights.Relative ? 1 : points.Average(p => p.Stress.Pascals);
        var mean = Math.Max(fit.ResidualSumOfSquares / n, LeastScatter * LeastScatter * unit * unit);
        double? aicc = n - k - 1 > 0 ? (n * Math.Log(mean)) + (2.0 * k) + (2.0 * k * (k + 1) / (n - k - 1)) : null;
        ImmutableArray<FlowParameter> parameters =
            [.. fitted.Quantities.Select((q, j) => Parameter(q, fit.Parameters[j], fit.StandardErrors?[j]))];
        if (parameters.Any(p => !double.IsFinite(p.Value) || p.StandardError is { } se && !double.IsFinite(se)))
        {
            return Failed(model, new FlowTrouble.Undetermined());
        }

        return new(model, parameters, fit.ResidualSumOfSquares, aicc, null) { Fit = fit, Fitted = fitted };
    }

    private static FlowParameter Parameter(FlowQuantity quantity, double theta, double? error)
    {
        var value = quantity.Value(theta);
        var se = quantity.Slope(theta) * error;
        if (!quantity.MayBeNone || (se is { } known && value > Significant * known))
        {
            return new(quantity.Name, quantity.Words, quantity.Unit, value, se, null);
        }

        // On the root's scale the limit is taken there, as the delta method fails near 0.
        var limit = error is { } e && quantity.Value(Math.Max(0, theta) + (OneSided * e)) is var l && double.IsFinite(l)
            ? l
            : (double?)null;
        return new(quantity.Name, quantity.Words, quantity.Unit, Math.Max(0, value), se, limit);
    }

    private static FlowFit WithLimit(FlowFit fit, FitOutcome.Converged? wide)
    {
        if (fit.Trouble is not null)
        {
            return fit;
        }

        var place = fit.Parameters.Length;
        double? limit = wide?.StandardErrors is { } errors ? Math.Max(0, wide.Parameters[place]) + (OneSided * errors[place]) : null;
        var last = Plateaus.LastQuantity;
        return fit with { Parameters = fit.Parameters.Add(new(last.Name, last.Words, last.Unit, 0, null, limit)) };
    }
}
