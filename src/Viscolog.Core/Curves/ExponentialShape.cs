using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>Body grows by the same factor with every gram: u = k·z.</summary>
internal sealed class ExponentialShape() : Shape(
    "exponential",
    new ShapeParameter("rise at range top", "ln", 3.5, 0.42))
{
    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        return parameters[0] * z;
    }
}
