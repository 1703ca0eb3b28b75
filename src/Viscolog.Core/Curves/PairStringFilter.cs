using MathNet.Numerics.LinearAlgebra;

namespace Viscolog.Core.Curves;

/// <summary>
/// The likelihood of one curve of the string over two doses: ln string = level + a·zA + b·g(zB), g bent (1 − e^(−βz))/(1 − e^(−β)), with
/// the level walking along the path of the doses. Level, a and b are integrated out; a draw holds β and the logarithms of the stray and of the repeatability.
/// </summary>
internal sealed class PairStringFilter
{
    /// <summary>Numbers in a draw.</summary>
    public const int Count = 3;

    private readonly StringReading[][] readings;

    public PairStringFilter(PairEvidence evidence, PairPath path)
    {
        Path = path;
        readings = [.. evidence.Steps.Select(s => s.Strings.ToArray())];
        Prior = PriorOf(evidence);
    }

    /// <summary>The way through the doses.</summary>
    public PairPath Path { get; }

    /// <summary>The prior of a draw.</summary>
    public Mixture Prior { get; }

    /// <summary>Variance that the level walks over a way.</summary>
    public static double Walk(double stray, (double Body, double String) way) => stray * stray * (way.Body + way.String);

    /// <summary>Variance that the level walks before a step.</summary>
    public double WalkBefore(int step, double stray) => step == 0 ? 0 : Walk(stray, Path.Distance(step - 1, Path.Body[step], Path.String[step]));

    /// <summary>The bent rise, 0 at 0 and 1 at the range top.</summary>
    public static double Form(double z, double bend) => Math.Abs(bend) < 1e-6 ? z : (1 - Math.Exp(-bend * z)) / (1 - Math.Exp(-bend));

    /// <summary>The log likelihood of a draw.</summary>
    /// <param name="draw">β, ln of the stray, ln of the repeatability.</param>
    /// <param name="states">Takes the state after each step; empty where not wanted.</param>
    public double LogLikelihood(ReadOnlySpan<double> draw, Span<WalkState> states)
    {
        var (bend, stray, variance) = (draw[0], Math.Exp(draw[1]), Math.Exp(2 * draw[2]));
        var state = new WalkState(
            (Math.Log(PairSettings.StringBaseMedian), PairSettings.StringBaseLogSd),
            (PairSettings.StringByBodyMean, PairSettings.StringByBodySd),
            (PairSettings.StringRiseMean, PairSettings.StringRiseSd));
        var (sum, product) = (0.0, 1.0);
        for (var k = 0; k < readings.Length; k++)
        {
            state.Walk(WalkBefore(k, stray));
            foreach (var reading in readings[k])
            {
                product *= state.Update(Path.Body[k], Form(Path.String[k], bend), reading.Ln, variance + reading.ExtraVariance);
                if (product is < 1e-200 or > 1e200)
                {
                    sum += Math.Log(product);
                    product = 1;
                }
            }

            if (!states.IsEmpty)
            {
                states[k] = state;
            }
        }

        sum += Math.Log(product);
        return double.IsFinite(sum) ? sum : double.NegativeInfinity;
    }

    /// <summary>The scatter of strings is learned along with the curve, about its default or about what many repeats have shown.</summary>
    private static Mixture PriorOf(PairEvidence evidence)
    {
        double[] mean = [PairSettings.BendMean, Math.Log(PairSettings.StringStrayMedian), Math.Log(evidence.StringRepeatability)];
        double[] sd = [PairSettings.BendSd, PairSettings.StringStrayLogSd, PairSettings.StringRepeatabilityLogSd];
        return new([new(1, mean, Matrix<double>.Build.DenseOfDiagonalArray([.. sd.Select(s => s * s)]))]);
    }
}
