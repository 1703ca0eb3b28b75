using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>A quick first rise with a plateau, then a second rise: u = A·(1 − e^(−z/a)) + B·(s((z − b)/w) − s(−b/w)), s the logistic function.</summary>
internal sealed class TwoStageShape() : Shape(
    "two-stage",
    new ShapeParameter("first rise", "ln", 1.2, 0.45),
    new ShapeParameter("first dose", "R", 0.13, 0.45),
    new ShapeParameter("second rise", "ln", 2.5, 0.4),
    new ShapeParameter("second dose", "R", 0.6, 0.2),
    new ShapeParameter("second width", "R", 0.05, 0.5))
{
    /// <summary>More than others: a plateau that is taken for the end of the curve is what pots go over by.</summary>
    internal override double PriorWeight => 1.5;

    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [0, -1, 0, -1, -1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        var first = parameters[0] * (1 - Math.Exp(-z / parameters[1]));
        var (place, width) = (parameters[3], parameters[4]);
        return first + (parameters[2] * (Logistic((z - place) / width) - Logistic(-place / width)));
    }

    private static double Logistic(double t)
    {
        return 1 / (1 + Math.Exp(-t));
    }
}
