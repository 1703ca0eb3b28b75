using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>Little until an onset c, then a rise: u = k·z + a·max(0, z − c)^p with 1 ≤ p ≤ 2.</summary>
internal sealed class OnsetShape() : Shape(
    "onset",
    new ShapeParameter("rise at range top", "ln", 3.5, 0.5),
    new ShapeParameter("onset dose", "R", 0.2, 0.7),
    new ShapeParameter("power above 1", "1", 0.35, 0.6),
    new ShapeParameter("slope before onset", "ln", 0.15, 1.0))
{
    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [1.7, -1, 0, 1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        var onset = parameters[1];
        var before = parameters[3] * z;
        if (z <= onset)
        {
            return before;
        }

        // The rise is stated at the range top; an onset near or beyond the top keeps a finite steepness.
        var power = 1 + Math.Min(1, parameters[2]);
        var reach = Math.Max(0.2, 1 - onset);
        return before + (parameters[0] * Math.Pow((z - onset) / reach, power));
    }
}
