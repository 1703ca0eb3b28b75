namespace Viscolog.Core.Curves;

/// <summary>Body grows by the same factor with every gram: u = k·z.</summary>
internal sealed class ExponentialShape() : Shape(
    "exponential",
    new ShapeParameter("rise at range top", "ln", 3.5, 0.5))
{
    /// <inheritdoc/>
    public override double Rise(ReadOnlySpan<double> logParameters, double z)
    {
        return Math.Exp(logParameters[0]) * z;
    }
}
