using MathNet.Numerics.LinearAlgebra;
using Viscolog.Core.Curves;
using Viscolog.Core.Observing;

namespace Viscolog.Core.Inference;

/// <summary>
/// The likelihood of one curve of the string over two doses: ln string = level + a·zA + b·g(zB), g one of <see cref="StringForm.All"/>, with the
/// level walking along the path of the doses. Level, a and b are integrated out; a draw holds the form's numbers and the logarithms of the discrepancy and of the repeatability.
/// </summary>
internal sealed class PairStringFilter
{
    /// <summary>Numbers in a draw beyond the form's own.</summary>
    private const int Extra = 2;

    private readonly StringReading[][] readings;

    public PairStringFilter(StringForm form, PairEvidence evidence, PairPath path)
    {
        Form = form;
        Path = path;
        readings = [.. evidence.Steps.Select(s => s.Strings.ToArray())];
        Prior = PriorOf(form, evidence);
    }

    /// <summary>How the string rises along the dose of the thickener that brings it.</summary>
    public StringForm Form { get; }

    /// <summary>Numbers in a draw.</summary>
    public int Count => Form.Priors.Length + Extra;

    /// <summary>The way through the doses.</summary>
    public PairPath Path { get; }

    /// <summary>The prior of a draw.</summary>
    public Mixture Prior { get; }

    /// <summary>Variance that the level walks over a way.</summary>
    public static double Walk(double discrepancy, (double Body, double String) way) => discrepancy * discrepancy * (way.Body + way.String);

    /// <summary>Variance that the level walks before a step.</summary>
    public double WalkBefore(int step, double discrepancy) => step == 0 ? 0 : Walk(discrepancy, Path.Distance(step - 1, Path.Body[step], Path.String[step]));

    /// <summary>The log likelihood of a draw.</summary>
    /// <param name="draw">The form's numbers, ln of the discrepancy, ln of the repeatability.</param>
    /// <param name="states">Takes the state after each step; empty where not wanted.</param>
    public double LogLikelihood(ReadOnlySpan<double> draw, Span<WalkState> states)
    {
        var numbers = draw[..^Extra];
        var (discrepancy, variance) = (Math.Exp(draw[^2]), Math.Exp(2 * draw[^1]));
        var state = new WalkState(
            (Math.Log(PairSettings.StringBaseMedian), PairSettings.StringBaseLogSd),
            (PairSettings.StringByBodyMean, PairSettings.StringByBodySd),
            (PairSettings.StringRiseMean, PairSettings.StringRiseSd));
        var (sum, product) = (0.0, 1.0);
        for (var k = 0; k < readings.Length; k++)
        {
            state.Walk(WalkBefore(k, discrepancy));
            var rise = Form.Rise(numbers, Path.String[k]);
            foreach (var reading in readings[k])
            {
                product *= state.Update(Path.Body[k], rise, reading.Ln, variance + reading.ExtraVariance);
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
    private static Mixture PriorOf(StringForm form, PairEvidence evidence)
    {
        double[] mean = [.. form.Priors.Select(p => p.Mean), Math.Log(PairSettings.StringDiscrepancyMedian), Math.Log(evidence.StringRepeatability)];
        double[] sd = [.. form.Priors.Select(p => p.Sd), PairSettings.StringDiscrepancyLogSd, PairSettings.StringRepeatabilityLogSd];
        return new([new(form.Share, mean, Matrix<double>.Build.DenseOfDiagonalArray([.. sd.Select(s => s * s)]))]);
    }
}

/// <summary>One draw of the string over two doses.</summary>
internal sealed class PairStringDraw
{
    private readonly double discrepancy;
    private readonly PairPath path;
    private readonly WalkState[] states;

    public PairStringDraw(double[] draw, PairStringFilter filter)
    {
        Form = filter.Form;
        Numbers = draw[..Form.Priors.Length];
        (discrepancy, Repeatability) = (Math.Exp(draw[^2]), Math.Exp(draw[^1]));
        path = filter.Path;
        states = new WalkState[path.Count];
        filter.LogLikelihood(draw, states);
        for (var k = states.Length - 2; k >= 0; k--)
        {
            states[k] = states[k].Smoothed(states[k + 1], filter.WalkBefore(k + 1, discrepancy));
        }
    }

    /// <summary>How the string rises along the dose of the thickener that brings it.</summary>
    public StringForm Form { get; }

    /// <summary>That form's numbers.</summary>
    public double[] Numbers { get; }

    /// <summary>Scatter of repeat readings on the ln scale.</summary>
    public double Repeatability { get; }

    /// <summary>What the readings leave of level and coefficients now.</summary>
    public WalkState Now => states[^1];

    /// <summary>Mean and variance of ln string at doses over the range tops.</summary>
    public (double Mean, double Variance) At(double body, double @string)
    {
        var nearest = path.Nearest(body, @string);
        var (mean, variance) = states[nearest].At(body, Form.Rise(Numbers, @string));
        return (mean, variance + PairStringFilter.Walk(discrepancy, path.Distance(nearest, body, @string)));
    }
}
