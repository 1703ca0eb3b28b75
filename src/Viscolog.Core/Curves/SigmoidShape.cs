namespace Viscolog.Core.Curves;

/// <summary>A slow start, a steep middle and a plateau: u = S·z^h/(z50^h + z^h) (the Hill form).</summary>
internal sealed class SigmoidShape() : Shape(
    "sigmoid",
    new ShapeParameter("span", "ln", 4, 0.45),
    new ShapeParameter("half-way dose", "R", 0.45, 0.65),
    new ShapeParameter("steepness", "1", 2.5, 0.7))
{
    /// <inheritdoc/>
    public override double Rise(ReadOnlySpan<double> logParameters, double z)
    {
        if (z <= 0)
        {
            return 0;
        }

        var h = Math.Exp(logParameters[2]);
        return Math.Exp(logParameters[0]) / (1 + Math.Exp(h * (logParameters[1] - Math.Log(z))));
    }
}
