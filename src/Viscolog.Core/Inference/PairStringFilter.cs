using Viscolog.Core.Curves;
using Viscolog.Core.Observing;
using Viscolog.Core.Sampling;

namespace Viscolog.Core.Inference;

/// <summary>
/// The likelihood of one curve of the string over two doses: ln string = level + a·zA + b·g(zB), g one of <see cref="StringForm.All"/>,
/// with the
/// level walking along the path of the doses. Level, a and b are integrated out; a draw holds the form's numbers and the logarithms of the
/// discrepancy and of the repeatability.
/// </summary>
internal sealed class PairStringFilter
{
    private readonly StringReading[][] _readings;

    public PairStringFilter(StringForm form, Evidence evidence, PairPath path)
    {
        Form = form;
        Path = path;
        _readings = [.. evidence.Steps.Select(s => s.Strings.ToArray())];
        Prior = PriorOf(form, evidence);
    }

    /// <summary>How the string rises along the dose of the thickener that brings it.</summary>
    public StringForm Form { get; }

    /// <summary>The way through the doses.</summary>
    public PairPath Path { get; }

    /// <summary>The prior of a draw.</summary>
    public Mixture Prior { get; }

    /// <summary>Variance that the level walks over a way.</summary>
    public static double Walk(double discrepancy, (double Body, double String) way) => discrepancy * discrepancy * (way.Body + way.String);

    /// <summary>Variance that the level walks before a step.</summary>
    public double WalkBefore(int step, double discrepancy)
        => step == 0 ? 0 : Walk(discrepancy, Path.Distance(step - 1, Path.Body[step], Path.String[step]));

    /// <summary>The log likelihood of a draw.</summary>
    /// <param name="draw">The draw.</param>
    /// <param name="states">Takes the state after each step; empty where not wanted.</param>
    public double LogLikelihood(StringParameters draw, Span<WalkState> states)
    {
        var (discrepancy, variance) = (draw.Discrepancy, draw.Variance);
        var state = new WalkState(
            (Math.Log(PairSettings.StringBaseMedian), PairSettings.StringBaseLogSd),
            (PairSettings.StringByBodyMean, PairSettings.StringByBodySd),
            (PairSettings.StringRiseMean, PairSettings.StringRiseSd));
        var likelihood = new LogProduct();
        for (var k = 0; k < _readings.Length; k++)
        {
            state.Walk(WalkBefore(k, discrepancy));
            var rise = Form.Rise(draw.Form, Path.String[k]);
            foreach (var reading in _readings[k])
            {
                likelihood.Times(state.Update(Path.Body[k], rise, reading.Ln, variance + reading.ExtraVariance));
            }

            if (!states.IsEmpty)
            {
                states[k] = state;
            }
        }

        return likelihood.Log;
    }

    /// <summary>The scatter of strings is learned along with the curve, about its default or about what many repeats have shown.</summary>
    private static Mixture PriorOf(StringForm form, Evidence evidence)
    {
        var mean = StringParameters.Row(
            form.Priors.Select(p => p.Mean), Math.Log(PairSettings.StringDiscrepancyMedian), Math.Log(evidence.StringRepeatability));
        var sd = StringParameters.Row(
            form.Priors.Select(p => p.Sd), PairSettings.StringDiscrepancyLogSd, PairSettings.StringRepeatabilityLogSd);
        return new([GaussianComponent.Independent(form.Share, mean, sd)]);
    }
}

/// <summary>One draw of the string over two doses.</summary>
internal sealed class PairStringDraw
{
    private readonly double _discrepancy;
    private readonly PairPath _path;
    private readonly WalkState[] _states;

    public PairStringDraw(StringParameters draw, PairStringFilter filter)
    {
        Form = filter.Form;
        Numbers = draw.Form.ToArray();
        (_discrepancy, Repeatability) = (draw.Discrepancy, draw.Repeatability);
        _path = filter.Path;
        _states = new WalkState[_path.Count];
        filter.LogLikelihood(draw, _states);
        WalkState.Smooth(_states, step => filter.WalkBefore(step, _discrepancy));
    }

    /// <summary>How the string rises along the dose of the thickener that brings it.</summary>
    public StringForm Form { get; }

    /// <summary>That form's numbers.</summary>
    public double[] Numbers { get; }

    /// <summary>Scatter of repeat readings on the ln scale.</summary>
    public double Repeatability { get; }

    /// <summary>What the readings leave of level and coefficients now.</summary>
    public WalkState Now => _states[^1];

    /// <summary>Mean and variance of ln string at doses over the range tops.</summary>
    public (double Mean, double Variance) At(double body, double strings)
    {
        var nearest = _path.Nearest(body, strings);
        var (mean, variance) = _states[nearest].At(body, Form.Rise(Numbers, strings));
        return (mean, variance + PairStringFilter.Walk(_discrepancy, _path.Distance(nearest, body, strings)));
    }
}
