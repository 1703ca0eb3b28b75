using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>
/// No form at all: a straight rise u = k·z from which the true curve strays by a lot, so that what lies beyond the last dose is foretold by
/// the general pace only. It stands for kinks, steps and plateaus that no other shape has.
/// </summary>
internal sealed class UnevenShape() : Shape(
    "uneven",
    new ShapeParameter("rise at range top", "ln", 3.5, 0.4))
{
    /// <inheritdoc/>
    internal override double StrayMedian => 0.5;

    /// <inheritdoc/>
    internal override double StrayLogSd => 0.4;

    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        return parameters[0] * z;
    }
}
