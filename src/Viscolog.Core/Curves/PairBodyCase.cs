namespace Viscolog.Core.Curves;

/// <summary>One believed case of the body over two doses.</summary>
internal sealed class PairBodyCase
{
    private readonly Shape shape;
    private readonly double[] parameters;
    private readonly double exponent;
    private readonly double stray;
    private readonly PairPath path;
    private readonly WalkState[] states;

    public PairBodyCase(int shapeIndex, double[] draw, PairBodyFilter filter)
    {
        ShapeIndex = shapeIndex;
        shape = Shapes.All[shapeIndex];
        parameters = draw[..^PairBodyFilter.Extra];
        (exponent, TimeConstant, stray) = (Math.Exp(draw[^3]), Math.Exp(draw[^2]), Math.Exp(draw[^1]));
        path = filter.Path;
        states = new WalkState[filter.StepCount];
        filter.LogLikelihood(shape, draw, states);
        for (var k = states.Length - 2; k >= 0; k--)
        {
            states[k] = states[k].Smoothed(states[k + 1], filter.WalkBefore(k + 1, stray));
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
        return (mean + shape.Rise(parameters, body), variance + PairBodyFilter.Walk(stray, path.Distance(nearest, body, @string)));
    }
}
