using MathNet.Numerics.Statistics;
using Viscolog.Core.Curves;
using Viscolog.Core.Fitting;
using Viscolog.Core.Practice;

namespace Viscolog.Benchmarks;

/// <summary>
/// What priors the laws of real materials ask for: each shape is fitted by least squares to laws of each kind, and the parameters of the fits
/// that hold to 0.15 in ln are pooled, with all kinds and with one kind left out at a time.
/// </summary>
internal static class ShapePriors
{
    private const int LawsOfKind = 40;
    private const int Grid = 25;
    private const double GoodFit = 0.15;

    public static int Run()
    {
        var random = new Random(4711);
        var laws = Enumerable.Range(0, RealLaws.Count)
            .SelectMany(kind => Enumerable.Range(0, LawsOfKind).Select(_ => (Kind: kind, Law: RealLaws.Draw(kind, random)))).ToArray();
        Console.WriteLine("shape, parameter: median and log deviation in use; of the fits of all kinds; medians with one kind left out");
        foreach (var shape in Shapes.All)
        {
            var fits = laws.AsParallel().AsOrdered().Select(l => (l.Kind, Fit: Fitted(shape, l.Law))).Where(f => f.Fit is not null).ToArray();
            Console.WriteLine(FormattableString.Invariant(
                $"{shape.Name}: {100.0 * fits.Length / laws.Length:0} % of the laws, kinds {string.Join(' ', fits.Select(f => f.Kind).Distinct())}"));
            for (var j = 0; j < shape.Parameters.Length && fits.Length > 5; j++)
            {
                var parameter = shape.Parameters[j];
                double[] Of(Func<int, bool> kind) => [.. fits.Where(f => kind(f.Kind)).Select(f => f.Fit![j])];
                var all = Of(_ => true);
                var left = Enumerable.Range(0, RealLaws.Count).Select(k => Of(x => x != k)).Where(v => v.Length > 2).Select(v => Math.Exp(v.Median())).ToArray();
                Console.WriteLine(FormattableString.Invariant(
                    $"  {parameter.Name}: {parameter.Median:0.###}, {parameter.LogSd:0.##}; {Math.Exp(all.Median()):0.###}, {Spread(all):0.##}; {left.Min():0.###} to {left.Max():0.###}"));
            }
        }

        return 0;
    }

    /// <summary>Half the width that holds the middle 68 %.</summary>
    private static double Spread(double[] values) => (values.Quantile(0.84) - values.Quantile(0.16)) / 2;

    private static double[]? Fitted(Shape shape, HiddenLaw law)
        => LeastSquares.Fit(new LawProblem(shape, law), [.. shape.Parameters.Select(p => Math.Log(p.Median))], new FitOptions { ExtraStarts = 3 }) switch
        {
            FitOutcome.Converged fit when Math.Sqrt(fit.ResidualSumOfSquares / Grid) < GoodFit => [.. fit.Parameters],
            FitOutcome.NotConverged fit when fit.Best.Count > 0 && LawProblem.Rms(shape, law, [.. fit.Best]) < GoodFit => [.. fit.Best],
            _ => null,
        };

    /// <summary>A law on a grid over the usual range; a slight pull to the shape's prior keeps what the law does not tell from running away.</summary>
    private sealed class LawProblem(Shape shape, HiddenLaw law) : ResidualProblem(shape.Parameters.Length, Grid, shape.Parameters.Length)
    {
        private const double Pull = 0.05;

        public override void Residuals(ReadOnlySpan<double> parameters, Span<double> residuals)
        {
            for (var i = 0; i < Grid; i++)
            {
                residuals[i] = Off(shape, law, parameters, i);
            }

            for (var j = 0; j < shape.Parameters.Length; j++)
            {
                residuals[Grid + j] = Pull * (parameters[j] - Math.Log(shape.Parameters[j].Median)) / shape.Parameters[j].LogSd;
            }
        }

        public static double Rms(Shape shape, HiddenLaw law, double[] parameters)
            => Math.Sqrt(Enumerable.Range(0, Grid).Average(i => Math.Pow(Off(shape, law, parameters, i), 2)));

        private static double Off(Shape shape, HiddenLaw law, ReadOnlySpan<double> parameters, int i)
        {
            var z = (i + 1.0) / Grid;
            return law.LnBody(z) - law.LnBody(0) - shape.Rise(parameters, z);
        }
    }
}
