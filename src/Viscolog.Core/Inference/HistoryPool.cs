using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using Viscolog.Core.Curves;
using Viscolog.Core.Sampling;

namespace Viscolog.Core.Inference;

/// <summary>
/// What earlier runs say together of a new lot's curve. For each shape two normal components, however many runs there are: one in which
/// every run tells of the same curve, lots apart (a normal hierarchy: Lindley and Smith, Journal of the Royal Statistical Society B 34
/// (1972)
/// 1–41), and one that is as wide as the runs are apart, for when they are not alike.
/// </summary>
internal static class HistoryPool
{
    /// <summary>The components of each of <see cref="Shapes.All"/>; their weights sum to what is left beside the unlike.</summary>
    public static ImmutableArray<ImmutableArray<GaussianComponent>> Of(IReadOnlyList<EarlierRun> earlier)
    {
        const double like = 1 - HistorySettings.UnlikeThickener;
        var weights = TogetherWeights(earlier);
        return [.. Shapes.All.Select((shape, s) =>
        {
            ShapeMoments[] runs = [.. earlier.Select(r => r.Moments[s]).OfType<ShapeMoments>()];
            if (runs.Length == 0)
            {
                return ImmutableArray<GaussianComponent>.Empty;
            }

            var lots = LotVariance(shape);
            var (mean, covariance) = WithoutScatter(shape, Together(runs, shape, lots));
            var (looseMean, looseCovariance) = WithoutScatter(shape, Apart(runs));
            var loose = like * (1 - HistorySettings.Together) * runs.Sum(t => t.Weight) / earlier.Count;
            return ImmutableArray.Create(
                new GaussianComponent(like * HistorySettings.Together * weights[s], mean, covariance + lots),
                new GaussianComponent(loose, looseMean, looseCovariance + lots));
        })];
    }

    /// <summary>The scatter belongs to method and hand and is learned from repeats; earlier curves say nothing of it.</summary>
    private static (double[] Mean, Matrix<double> Covariance) WithoutScatter(Shape shape, (double[] Mean, Matrix<double> Covariance) of)
    {
        var place = shape.Parameters.Length + Nuisances.ScatterPlace;
        of.Mean[place] = 0;
        of.Covariance.ClearRow(place);
        of.Covariance.ClearColumn(place);
        of.Covariance[place, place] = 1;
        return of;
    }

    /// <summary>The weight of each shape where all runs are of one shape: the product of how each run raised or lowered it.</summary>
    private static double[] TogetherWeights(IReadOnlyList<EarlierRun> earlier)
    {
        var prior = Shapes.All.Sum(s => s.PriorWeight);
        var logs = Shapes.All.Select((shape, s) =>
        {
            var before = shape.PriorWeight / prior;
            return earlier.Any(r => r.Moments[s] is not null)
                ? Math.Log(before) + earlier.Sum(
                    r => Math.Log(Math.Max(r.ShapeWeights[s], HistorySettings.LeastShapeWeight * before) / before))
                : double.NegativeInfinity;
        }).ToArray();
        var greatest = logs.Max();
        var sum = logs.Sum(l => Math.Exp(l - greatest));
        return [.. logs.Select(l => Math.Exp(l - greatest) / sum)];
    }

    /// <summary>Each run's likelihood is its posterior with the common prior taken out; widened by the lots, they multiply.</summary>
    private static (double[] Mean, Matrix<double> Covariance) Together(ShapeMoments[] runs, Shape shape, Matrix<double> lots)
    {
        var generic = Prior.Generic(shape, 1);
        var before = generic.Covariance.Inverse();
        var centre = Vector<double>.Build.DenseOfArray(generic.Mean);
        var precision = before.Clone();
        var information = before * centre;
        var between = lots.Inverse();
        foreach (var run in runs)
        {
            var after = run.Covariance.Inverse();
            var own = PositivePart(after - before);
            if (own.Precision.L2Norm() <= 0)
            {
                continue;
            }

            // The centre of the run's likelihood lies where its posterior's pull away from the prior is made up; directions it is silent
            // on stay at the prior's centre.
            var pull = own.Axes * own.Axes.Transpose() * ((after * (Vector<double>.Build.DenseOfArray(run.Mean) - centre)));
            var widened = own.Precision - (own.Precision * (own.Precision + between).Inverse() * own.Precision);
            var offset = pull - (own.Precision * (own.Precision + between).Inverse() * pull);
            precision += widened;
            information += (widened * centre) + offset;
        }

        var covariance = precision.Inverse();
        covariance = (covariance + covariance.Transpose()) / 2;
        return ((covariance * information).ToArray(), covariance);
    }

    private static (Matrix<double> Precision, Matrix<double> Axes) PositivePart(Matrix<double> symmetric)
    {
        var parts = ((symmetric + symmetric.Transpose()) / 2).Evd(Symmetricity.Symmetric);
        var values = parts.EigenValues.Select(v => v.Real).ToArray();
        var axes = Matrix<double>.Build.DenseOfColumnVectors(
            parts.EigenVectors.EnumerateColumns().Select((c, i) => values[i] > 0 ? c : c * 0));
        return (axes * Matrix<double>.Build.DenseOfDiagonalArray([.. values.Select(v => Math.Max(0, v))]) * axes.Transpose(), axes);
    }

    /// <summary>Mean and covariance of the runs' posteriors thrown together.</summary>
    private static (double[] Mean, Matrix<double> Covariance) Apart(ShapeMoments[] runs)
    {
        var total = runs.Sum(t => t.Weight);
        var mean = runs.Select(t => Vector<double>.Build.DenseOfArray(t.Mean) * (t.Weight / total)).Aggregate((a, b) => a + b);
        var covariance = runs.Select(t =>
        {
            var off = Vector<double>.Build.DenseOfArray(t.Mean) - mean;
            return (t.Covariance + off.OuterProduct(off)) * (t.Weight / total);
        }).Aggregate((a, b) => a + b);
        return (mean.ToArray(), covariance);
    }

    /// <summary>How lots differ: in potency, which moves all parameters together, and a little in each.</summary>
    private static Matrix<double> LotVariance(Shape shape)
    {
        var potency = Vector<double>.Build.DenseOfArray(CurveParameters.Row(shape.Potency, 0, 0)) * HistorySettings.LotPotencyLogSd;
        var own = CurveParameters.Row(
            shape.Potency.Select(_ => HistorySettings.LotParameterLogSd), HistorySettings.LotExtraSd, HistorySettings.LotExtraSd);
        return potency.OuterProduct(potency) + Matrix<double>.Build.DenseOfDiagonalArray([.. own.Select(v => v * v)]);
    }
}

/// <summary>How earlier runs bear on a new one; defaults from memory.</summary>
internal static class HistorySettings
{
    /// <summary>Chance before any reading that a new pot has the base of the earlier runs but another thickener.</summary>
    public const double UnlikeThickener = 0.05;

    /// <summary>Chance before any reading that its base is another one.</summary>
    public const double UnlikeBase = 0.1;

    /// <summary>
    /// Of the pots that are like the earlier runs, this part is like all of them together, the others like any one of them.
    /// </summary>
    public const double Together = 0.7;

    /// <summary>A single run never speaks against a shape by more than leaving it this weight.</summary>
    public const double LeastShapeWeight = 0.03;

    /// <summary>Chance of being unlike its history from which on a pot is also judged without it.</summary>
    public const double SignOfUnlike = 0.3;

    /// <summary>Chance from which on the history is set aside.</summary>
    public const double SurelyUnlike = 0.8;

    /// <summary>So many standard deviations between the base's body and its history are a sign of another base.</summary>
    public const double FarLevel = 1.5;

    /// <summary>Standard deviation of ln of a lot's potency.</summary>
    public const double LotPotencyLogSd = 0.08;

    /// <summary>Standard deviation between lots of ln of each parameter, beyond what potency does.</summary>
    public const double LotParameterLogSd = 0.04;

    /// <summary>
    /// Standard deviation between lots of ln of the discrepancy and of what all readings share, over its own before any reading.
    /// </summary>
    public const double LotExtraSd = 0.18;

    /// <summary>Standard deviation between lots of ln of the base's body.</summary>
    public const double LotLevelSd = 0.15;
}
