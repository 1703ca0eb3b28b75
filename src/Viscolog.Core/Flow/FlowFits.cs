using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using Viscolog.Core.Fitting;

namespace Viscolog.Core.Flow;

/// <summary>Fits every law to a flow curve.</summary>
public static class FlowFits
{
    /// <summary>A yield stress or last plateau counts as shown where Student's t puts it above 0 with this chance.</summary>
    private const double Significant = 0.975;

    /// <summary>Chance that a value lies below its upper limit, by Student's t.</summary>
    private const double OneSided = 0.95;

    /// <summary>The least relative scatter that counts; exact numbers would make ln RSS run away.</summary>
    private const double LeastScatter = 1e-9;

    /// <summary>
    /// Evaluations of a law at one point, over all starts, before a fit is given up: a law that the data do not show would search on for
    /// long.
    /// </summary>
    private const int MostWork = 600_000;

    private const int FewestEvaluations = 400;

    /// <summary>The most through a gap, where a fit begins near its end.</summary>
    private const int MostInGap = 400;

    private const int MostEvaluations = 20_000;

    /// <summary>Fits.</summary>
    /// <param name="points">The points; at least 1.</param>
    /// <param name="weights">How much each counts.</param>
    /// <returns>One fit for each of <see cref="FlowModel.All"/>, heaviest first.</returns>
    /// <exception cref="ArgumentException">There are no points.</exception>
    public static ImmutableArray<FlowFit> Of(ImmutableArray<FlowPoint> points, FlowWeights weights) => Of(points, weights, null);

    /// <summary>Fits points that were read in a gap, each law through its own profile of shear across it.</summary>
    internal static ImmutableArray<FlowFit> Of(ImmutableArray<FlowPoint> points, FlowWeights weights, GapProfile? gap)
    {
        if (points.IsDefaultOrEmpty)
        {
            throw new ArgumentException("needs points", nameof(points));
        }

        FlowFit[] fits = [.. FlowModel.All.Select(m => Fit(m, new(points, weights, gap)))];
        var least = fits.Min(f => f.Aicc) ?? 0;
        var total = fits.Sum(f => f.Aicc is { } a ? Math.Exp((least - a) / 2) : 0);
        return [.. fits.Select(f => f with { Weight = f.Aicc is { } a ? Math.Exp((least - a) / 2) / total : 0 })
            .OrderByDescending(f => f.Weight)];
    }

    private static FlowFit Fit(FlowModel model, FlowData data)
    {
        if (data.Points.Length <= model.Quantities.Length)
        {
            return Failed(model, new FlowTrouble.TooFewPoints(data.Points.Length, model.Quantities.Length));
        }

        var full = Solve(model, data) as FitOutcome.Converged;
        if (model.Reduced is not { } reduced || (full is not null && IsShown(full, model.NonePlace)))
        {
            return full is null ? Failed(model, new FlowTrouble.Undetermined()) : Report(model, model, full, data);
        }

        if (full is null && !model.HasPlateaus)
        {
            return Failed(model, new FlowTrouble.Undetermined());
        }

        return Solve(reduced, data) is FitOutcome.Converged less
            ? WithLimit(Report(model, reduced, less, data), full)
            : Failed(model, model.HasPlateaus ? new FlowTrouble.NoPlateaus() : new FlowTrouble.Undetermined());
    }

    /// <summary>
    /// Fits to the rates at first sight, and from there through the gap, where each evaluation takes some hundred times as long.
    /// </summary>
    private static FitOutcome Solve(FlowModel model, FlowData data)
    {
        var most = Math.Clamp(MostWork / data.Points.Length, FewestEvaluations, MostEvaluations);
        var first = Solve(new FlowProblem(model, data.Points, data.Weights, null), null, most);
        var found = (first as FitOutcome.Converged)?.Parameters;
        return data.Gap is null || (found is null && model.HasPlateaus)
            ? first
            : Solve(new FlowProblem(model, data.Points, data.Weights, data.Gap), found, MostInGap);
    }

    private static FitOutcome Solve(FlowProblem problem, IReadOnlyList<double>? start, int evaluations)
        => LeastSquares.Fit(problem, start is null ? problem.Start() : [.. start], new FitOptions
        {
            StartWidths = [.. Enumerable.Repeat(1.0, problem.ParameterCount)],
            MaximumEvaluations = evaluations,
        });

    private static FlowFit Failed(FlowModel model, FlowTrouble why) => new(model, [], null, null, why);

    private static bool IsShown(FitOutcome.Converged fit, int place)
        => fit.StandardErrors is { } errors && fit.Parameters[place] > Student(fit, Significant) * errors[place];

    private static double Student(FitOutcome.Converged fit, double chance) => StudentT.InvCDF(0, 1, fit.DegreesOfFreedom, chance);

    private static FlowFit Report(FlowModel model, FlowModel fitted, FitOutcome.Converged fit, FlowData data)
    {
        // A yield stress that came out as none was looked for all the same; without its last plateau a law is one of its own.
        var (n, k) = (data.Points.Length, (model.HasPlateaus ? fitted : model).Quantities.Length + 1);
        var unit = data.Weights == FlowWeights.Relative ? 1 : data.Points.Average(p => p.Stress.Pascals);
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
        => new(quantity.Name, quantity.Words, quantity.Unit, quantity.Value(theta), quantity.Slope(theta) * error, null);

    /// <summary>Puts back what was taken for none, with what it is below.</summary>
    private static FlowFit WithLimit(FlowFit fit, FitOutcome.Converged? full)
    {
        if (fit.Trouble is not null)
        {
            return fit;
        }

        var (place, none) = (fit.Model.NonePlace, fit.Model.Quantities[fit.Model.NonePlace]);

        // On the scale of the fit: near 0 the delta method fails on a root.
        var limit = full?.StandardErrors is { } errors
            ? none.Value(Math.Max(0, full.Parameters[place]) + (Student(full, OneSided) * errors[place])) : (double?)null;
        return fit with
        {
            Parameters = fit.Parameters.Insert(
                place, new(none.Name, none.Words, none.Unit, 0, null, limit is { } l && double.IsFinite(l) ? l : null)),
        };
    }

    /// <summary>What is fitted.</summary>
    private sealed record FlowData(ImmutableArray<FlowPoint> Points, FlowWeights Weights, GapProfile? Gap);
}
