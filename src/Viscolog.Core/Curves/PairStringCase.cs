namespace Viscolog.Core.Curves;

/// <summary>One believed case of the string over two doses.</summary>
internal sealed class PairStringCase
{
    private readonly double stray;
    private readonly PairPath path;
    private readonly WalkState[] states;

    public PairStringCase(double[] draw, PairStringFilter filter)
    {
        (Bend, stray, Repeatability) = (draw[0], Math.Exp(draw[1]), Math.Exp(draw[2]));
        path = filter.Path;
        states = new WalkState[path.Count];
        filter.LogLikelihood(draw, states);
        for (var k = states.Length - 2; k >= 0; k--)
        {
            states[k] = states[k].Smoothed(states[k + 1], filter.WalkBefore(k + 1, stray));
        }
    }

    /// <summary>How the rise bends.</summary>
    public double Bend { get; }

    /// <summary>Scatter of repeat readings on the ln scale.</summary>
    public double Repeatability { get; }

    /// <summary>What the readings leave of level and coefficients now.</summary>
    public WalkState Now => states[^1];

    /// <summary>Mean and variance of ln string at doses over the range tops.</summary>
    public (double Mean, double Variance) At(double body, double @string)
    {
        var nearest = path.Nearest(body, @string);
        var (mean, variance) = states[nearest].At(body, PairStringFilter.Form(@string, Bend));
        return (mean, variance + PairStringFilter.Walk(stray, path.Distance(nearest, body, @string)));
    }
}
