using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;

namespace Viscolog.Core.Curves;

/// <summary>
/// What earlier runs say together of a new lot's curve. For each shape two normal components, however many runs there are: one in which
/// every run tells of the same curve, lots apart (a normal hierarchy: Lindley and Smith, Journal of the Royal Statistical Society B 34 (1972)
/// 1–41), and one that is as wide as the runs are apart, for when they are not alike.
/// </summary>
internal static class HistoryPool
{
    /// <summary>The components of each of <see cref="Shapes.All"/>; their weights sum to what is left beside the unlike.</summary>
    public static ImmutableArray<ImmutableArray<GaussianComponent>> Of(IReadOnlyList<Belief> earlier)
    {
        const double like = 1 - HistorySettings.UnlikeThickener;
        var weights = TogetherWeights(earlier);
        return [.. Shapes.All.Select((shape, s) =>
        {
            PosteriorSummary[] told = [.. earlier.Select(b => b.Summarize(s)).OfType<PosteriorSummary>()];
            if (told.Length == 0)
            {
                return ImmutableArray<GaussianComponent>.Empty;
            }

            var lots = LotVariance(shape);
            var (mean, covariance) = Together(told, shape, lots);
            var (looseMean, looseCovariance) = Apart(told);
            var loose = like * (1 - HistorySettings.Together) * told.Sum(t => t.Weight) / earlier.Count;
            return ImmutableArray.Create(
                new GaussianComponent(like * HistorySettings.Together * weights[s], mean, covariance + lots),
                new GaussianComponent(loose, looseMean, looseCovariance + lots));
        })];
    }

    /// <summary>The weight of each shape where all runs are of one shape: the product of how each run raised or lowered it.</summary>
    private static double[] TogetherWeights(IReadOnlyList<Belief> earlier)
    {
        var prior = Shapes.All.Sum(s => s.PriorWeight);
        var logs = Shapes.All.Select((shape, s) =>
        {
            var before = shape.PriorWeight / prior;
            return earlier.Any(b => b.Summarize(s) is not null)
                ? Math.Log(before) + earlier.Sum(b => Math.Log(Math.Max(b.ShapeWeights[s], HistorySettings.LeastShapeWeight * before) / before))
                : double.NegativeInfinity;
        }).ToArray();
        var greatest = logs.Max();
        var sum = logs.Sum(l => Math.Exp(l - greatest));
        return [.. logs.Select(l => Math.Exp(l - greatest) / sum)];
    }

    /// <summary>Each run's likelihood is its posterior with the common prior taken out; widened by the lots, they multiply.</summary>
    private static (double[] Mean, Matrix<double> Covariance) Together(PosteriorSummary[] told, Shape shape, Matrix<double> lots)
    {
        var generic = Prior.Generic(shape, 1);
        var before = generic.Covariance.Inverse();
        var centre = Vector<double>.Build.DenseOfArray(generic.Mean);
        var precision = before.Clone();
        var information = before * centre;
        var between = lots.Inverse();
        foreach (var run in told)
        {
            var after = run.Covariance.Inverse();
            var own = PositivePart(after - before);
            if (own.Precision.L2Norm() <= 0)
            {
                continue;
            }

            // The centre of the run's likelihood lies where its posterior's pull away from the prior is made up; directions it is silent on stay at the prior's centre.
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
        var axes = Matrix<double>.Build.DenseOfColumnVectors(parts.EigenVectors.EnumerateColumns().Select((c, i) => values[i] > 0 ? c : c * 0));
        return (axes * Matrix<double>.Build.DenseOfDiagonalArray([.. values.Select(v => Math.Max(0, v))]) * axes.Transpose(), axes);
    }

    /// <summary>Mean and covariance of the runs' beliefs thrown together.</summary>
    private static (double[] Mean, Matrix<double> Covariance) Apart(PosteriorSummary[] told)
    {
        var total = told.Sum(t => t.Weight);
        var mean = told.Select(t => Vector<double>.Build.DenseOfArray(t.Mean) * (t.Weight / total)).Aggregate((a, b) => a + b);
        var covariance = told.Select(t =>
        {
            var off = Vector<double>.Build.DenseOfArray(t.Mean) - mean;
            return (t.Covariance + off.OuterProduct(off)) * (t.Weight / total);
        }).Aggregate((a, b) => a + b);
        return (mean.ToArray(), covariance);
    }

    /// <summary>How lots differ: in potency, which moves all parameters together, and a little in each.</summary>
    private static Matrix<double> LotVariance(Shape shape)
    {
        var potency = Vector<double>.Build.DenseOfEnumerable([.. shape.Potency, .. new double[Prior.Extra]]) * HistorySettings.LotPotencyLogSd;
        double[] own = [.. shape.Potency.Select(_ => HistorySettings.LotParameterLogSd), .. Enumerable.Repeat(HistorySettings.LotExtraLogSd, Prior.Extra)];
        return potency.OuterProduct(potency) + Matrix<double>.Build.DenseOfDiagonalArray([.. own.Select(v => v * v)]);
    }
}
