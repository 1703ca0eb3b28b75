using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>
/// Little for long, then nearly all at once: u = k·z + B·(s((z − b)/w) − s(−b/w)), s the logistic function. What a plateau hides: the
/// readings before the step tell nothing of it.
/// </summary>
internal sealed class SteepStepShape() : Shape(
    "steep step",
    new ShapeParameter("slope", "ln", 1, 0.45),
    new ShapeParameter("step height", "ln", 2.2, 0.35),
    new ShapeParameter("step dose", "R", 0.5, 0.25),
    new ShapeParameter("step width", "R", 0.03, 0.5))
{
    /// <summary>More than others, as is the two-stage shape: nothing before a step tells of it.</summary>
    internal override double PriorWeight => 1.3;

    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [1, 0, -1, -1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        var (place, width) = (parameters[2], parameters[3]);
        return (parameters[0] * z) + (parameters[1] * (Logistic((z - place) / width) - Logistic(-place / width)));
    }

    private static double Logistic(double t) => 1 / (1 + Math.Exp(-t));
}
