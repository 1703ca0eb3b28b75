namespace Viscolog.Core.Curves;

/// <summary>Quick at first and ever slower: u = S·z/(K + z).</summary>
internal sealed class SaturatingShape() : Shape(
    "saturating",
    new ShapeParameter("rise at range top", "ln", 4, 0.45),
    new ShapeParameter("half-way dose", "R", 0.3, 0.5))
{
    /// <inheritdoc/>
    public override double Rise(ReadOnlySpan<double> logParameters, double z)
    {
        var half = Math.Exp(logParameters[1]);
        return Math.Exp(logParameters[0]) * (1 + half) * z / (half + z);
    }
}
