using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>Quick at first and ever slower: u = S·z/(K + z).</summary>
internal sealed class SaturatingShape() : Shape(
    "saturating",
    new ShapeParameter("rise at range top", "ln", 3.7, 0.4),
    new ShapeParameter("half-way dose", "R", 0.38, 0.5))
{
    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [0.23, -1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        return parameters[0] * (1 + parameters[1]) * z / (parameters[1] + z);
    }
}
