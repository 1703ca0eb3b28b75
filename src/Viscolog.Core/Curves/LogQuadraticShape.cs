using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>Rise and fall: u = H·(2·z/p − (z/p)²), greatest at z = p.</summary>
internal sealed class LogQuadraticShape() : Shape(
    "log-quadratic",
    new ShapeParameter("peak height", "ln", 3.4, 0.45),
    new ShapeParameter("peak dose", "R", 0.95, 0.35))
{
    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [0, -1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        var t = z / parameters[1];
        return parameters[0] * t * (2 - t);
    }
}
