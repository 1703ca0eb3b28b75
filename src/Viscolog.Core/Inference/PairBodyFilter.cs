using MathNet.Numerics.LinearAlgebra;
using Viscolog.Core.Curves;
using Viscolog.Core.Observing;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Inference;

/// <summary>
/// The likelihood of one curve of the body over two doses: ln body = level + rise of a shape over the body thickener's dose + the string
/// thickener's rise k·z^p + m·z^p·zA, with the level walking along the path of the doses as it does for one thickener. Level, k and m are
/// integrated out; a draw holds the shape's parameters, ln p, ln τ and the logarithm of the discrepancy.
/// </summary>
internal sealed class PairBodyFilter
{
    /// <summary>Numbers in a draw beyond the shape's: ln p, ln τ, ln of the discrepancy.</summary>
    public const int Extra = 3;

    private readonly PairEvidence evidence;
    private readonly double[] lastWait;
    private readonly double variance;
    private readonly double[] rise;
    private readonly double[] first;
    private readonly double[] second;
    private readonly double[] startRise;
    private readonly double[] startFirst;
    private readonly double[] startSecond;
    private readonly BodyReading[][] readings;

    public PairBodyFilter(PairEvidence evidence, PairPath path)
    {
        (this.evidence, Path) = (evidence, path);
        variance = evidence.Repeatability * evidence.Repeatability;
        readings = [.. evidence.Steps.Select(s => s.Body.Readings.ToArray())];
        lastWait = [.. readings.Select(r => r.Length == 0 ? double.PositiveInfinity : r.Max(x => x.WaitSeconds))];
        (rise, first, second) = (new double[path.Count], new double[path.Count], new double[path.Count]);
        (startRise, startFirst, startSecond) = (new double[path.Count], new double[path.Count], new double[path.Count]);
    }

    /// <summary>The way through the doses.</summary>
    public PairPath Path { get; }

    /// <summary>Steps with their readings.</summary>
    public int StepCount => readings.Length;

    /// <summary>The prior of a draw.</summary>
    public static Mixture PriorOf(Shape shape)
    {
        double[] mean = [.. shape.Parameters.Select(p => Math.Log(p.Median)), 0, Math.Log(BuildUp.PriorMedianSeconds), Math.Log(shape.DiscrepancyMedian)];
        double[] sd = [.. shape.Parameters.Select(p => p.LogSd), PairSettings.ExponentLogSd, BuildUp.PriorLogSd, shape.DiscrepancyLogSd];
        var share = shape.PriorWeight / Shapes.All.Sum(s => s.PriorWeight);
        return new([new(share, mean, Matrix<double>.Build.DenseOfDiagonalArray([.. sd.Select(s => s * s)]))]);
    }

    /// <summary>Variance that the level walks over a way.</summary>
    public static double Walk(double discrepancy, (double Body, double String) way)
        => (discrepancy * discrepancy * (way.Body + way.String)) + (PairSettings.DiscrepancyAlongString * way.String);

    /// <summary>Variance that the level walks before a step.</summary>
    public double WalkBefore(int step, double discrepancy) => step == 0 ? 0 : Walk(discrepancy, Path.Distance(step - 1, Path.Body[step], Path.String[step]));

    /// <summary>The log likelihood of a draw.</summary>
    /// <param name="shape">The shape.</param>
    /// <param name="draw">Its parameters, ln p, ln τ, ln of the discrepancy.</param>
    /// <param name="states">Takes the state after each step; empty where not wanted.</param>
    public double LogLikelihood(Shape shape, ReadOnlySpan<double> draw, Span<WalkState> states)
    {
        var (timeConstant, discrepancy) = (Math.Exp(draw[^2]), Math.Exp(draw[^1]));
        Prepare(shape, draw, timeConstant);
        var state = new WalkState(
            (Math.Log(PosteriorSettings.BaseMedian), PosteriorSettings.BaseLogSd),
            (PairSettings.BodyRiseMean, PairSettings.BodyRiseSd),
            (PairSettings.CrossMean, PairSettings.CrossSd));
        var (sum, product) = (0.0, 1.0);
        for (var k = 0; k < readings.Length; k++)
        {
            var before = WalkBefore(k, discrepancy);
            state.Walk(before);
            foreach (var reading in readings[k])
            {
                var left = k == 0 || double.IsInfinity(reading.WaitSeconds) ? 0 : BuildUp.Remaining(reading.WaitSeconds, timeConstant);
                product *= state.Update(
                    first[k] + (left * (startFirst[k] - first[k])),
                    second[k] + (left * (startSecond[k] - second[k])),
                    reading.Ln - rise[k] - (left * (startRise[k] - rise[k])),
                    variance + reading.ExtraVariance + (left * left * before));
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

    /// <summary>The change of a step from its start to its settled value, with k and m known; after the likelihood of the same draw.</summary>
    public double ChangeIn(int step, in WalkState state)
        => rise[step] - startRise[step] + (state.First * (first[step] - startFirst[step])) + (state.Second * (second[step] - startSecond[step]));

    private void Prepare(Shape shape, ReadOnlySpan<double> draw, double timeConstant)
    {
        var parameters = draw[..^Extra];
        var exponent = Math.Exp(draw[^3]);
        for (var k = 0; k < readings.Length; k++)
        {
            rise[k] = k > 0 && Path.Body[k] == Path.Body[k - 1] ? rise[k - 1] : shape.Rise(parameters, Path.Body[k]);
            first[k] = k > 0 && Path.String[k] == Path.String[k - 1] ? first[k - 1] : Form(Path.String[k], exponent);
            second[k] = first[k] * Path.Body[k];
            if (k == 0)
            {
                (startRise[0], startFirst[0], startSecond[0]) = (rise[0], first[0], second[0]);
                continue;
            }

            var left = BuildUp.Remaining(lastWait[k - 1], timeConstant);
            startRise[k] = rise[k - 1] + (left * (startRise[k - 1] - rise[k - 1]));
            startFirst[k] = first[k - 1] + (left * (startFirst[k - 1] - first[k - 1]));
            startSecond[k] = second[k - 1] + (left * (startSecond[k - 1] - second[k - 1]));
        }
    }

    /// <summary>The string thickener's form z^p.</summary>
    public static double Form(double z, double exponent) => z <= 0 ? 0 : Math.Pow(z, exponent);
}

/// <summary>One draw of the body over two doses.</summary>
internal sealed class PairBodyDraw
{
    private readonly Shape shape;
    private readonly double[] parameters;
    private readonly double exponent;
    private readonly double discrepancy;
    private readonly PairPath path;
    private readonly WalkState[] states;

    public PairBodyDraw(int shapeIndex, double[] draw, PairBodyFilter filter)
    {
        ShapeIndex = shapeIndex;
        shape = Shapes.All[shapeIndex];
        parameters = draw[..^PairBodyFilter.Extra];
        (exponent, TimeConstant, discrepancy) = (Math.Exp(draw[^3]), Math.Exp(draw[^2]), Math.Exp(draw[^1]));
        path = filter.Path;
        states = new WalkState[filter.StepCount];
        filter.LogLikelihood(shape, draw, states);
        for (var k = states.Length - 2; k >= 0; k--)
        {
            states[k] = states[k].Smoothed(states[k + 1], filter.WalkBefore(k + 1, discrepancy));
        }

        Changes = [.. Enumerable.Range(0, states.Length).Select(k => filter.ChangeIn(k, states[k]))];
    }

    /// <summary>Place of the shape in <see cref="Shapes.All"/>.</summary>
    public int ShapeIndex { get; }

    /// <summary>Logarithms of the shape's parameters.</summary>
    public IReadOnlyList<double> Parameters => parameters;

    /// <summary>τ in s.</summary>
    public double TimeConstant { get; }

    /// <summary>Exponent of the string thickener's dose.</summary>
    public double Exponent => exponent;

    /// <summary>Change of each step from its start to its settled value, in ln units.</summary>
    public double[] Changes { get; }

    /// <summary>What the readings leave of level, k and m now.</summary>
    public WalkState Now => states[^1];

    /// <summary>Mean and variance of the settled ln body at doses over the range tops.</summary>
    public (double Mean, double Variance) At(double body, double @string)
    {
        var form = PairBodyFilter.Form(@string, exponent);
        var nearest = path.Nearest(body, @string);
        var (mean, variance) = states[nearest].At(form, form * body);
        return (mean + shape.Rise(parameters, body), variance + PairBodyFilter.Walk(discrepancy, path.Distance(nearest, body, @string)));
    }
}
