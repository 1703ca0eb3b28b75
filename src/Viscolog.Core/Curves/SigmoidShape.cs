using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>A slow start, a steep middle and a plateau: u = S·z^h/(z50^h + z^h) (the Hill form).</summary>
internal sealed class SigmoidShape() : Shape(
    "sigmoid",
    new ShapeParameter("span", "ln", 4, 0.35),
    new ShapeParameter("half-way dose", "R", 0.45, 0.3),
    new ShapeParameter("steepness", "1", 2.5, 0.5))
{
    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [0, -1, 0];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        return z <= 0 ? 0 : parameters[0] / (1 + Math.Pow(parameters[1] / z, parameters[2]));
    }
}
