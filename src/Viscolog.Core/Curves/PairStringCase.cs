namespace Viscolog.Core.Curves;

/// <summary>One believed case of the string over two doses.</summary>
internal sealed class PairStringCase
{
    private readonly double stray;
    private readonly PairPath path;
    private readonly WalkState[] states;

    public PairStringCase(double[] draw, PairStringFilter filter)
    {
        Form = filter.Form;
        Numbers = draw[..Form.Priors.Length];
        (stray, Repeatability) = (Math.Exp(draw[^2]), Math.Exp(draw[^1]));
        path = filter.Path;
        states = new WalkState[path.Count];
        filter.LogLikelihood(draw, states);
        for (var k = states.Length - 2; k >= 0; k--)
        {
            states[k] = states[k].Smoothed(states[k + 1], filter.WalkBefore(k + 1, stray));
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
        return (mean, variance + PairStringFilter.Walk(stray, path.Distance(nearest, body, @string)));
    }
}
