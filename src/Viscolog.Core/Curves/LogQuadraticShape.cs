namespace Viscolog.Core.Curves;

/// <summary>Rise and fall: u = H·(2·z/p − (z/p)²), greatest at z = p.</summary>
internal sealed class LogQuadraticShape() : Shape(
    "log-quadratic",
    new ShapeParameter("peak height", "ln", 3.5, 0.6),
    new ShapeParameter("peak dose", "R", 0.9, 0.45))
{
    /// <inheritdoc/>
    public override double Rise(ReadOnlySpan<double> logParameters, double z)
    {
        var t = z / Math.Exp(logParameters[1]);
        return Math.Exp(logParameters[0]) * t * (2 - t);
    }
}
