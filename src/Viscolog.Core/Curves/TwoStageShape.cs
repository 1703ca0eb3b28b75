namespace Viscolog.Core.Curves;

/// <summary>A quick first rise with a plateau, then a second rise: u = A·(1 − e^(−z/a)) + B·(s((z − b)/w) − s(−b/w)), s the logistic function.</summary>
internal sealed class TwoStageShape() : Shape(
    "two-stage",
    new ShapeParameter("first rise", "ln", 1.2, 0.6),
    new ShapeParameter("first dose", "R", 0.15, 0.5),
    new ShapeParameter("second rise", "ln", 2.5, 0.5),
    new ShapeParameter("second dose", "R", 0.6, 0.45),
    new ShapeParameter("second width", "R", 0.08, 0.6))
{
    /// <summary>More than others: a plateau that is taken for the end of the curve is what pots go over by.</summary>
    internal override double PriorWeight => 1.3;

    /// <inheritdoc/>
    public override double Rise(ReadOnlySpan<double> logParameters, double z)
    {
        var first = Math.Exp(logParameters[0]) * (1 - Math.Exp(-z / Math.Exp(logParameters[1])));
        var place = Math.Exp(logParameters[3]);
        var width = Math.Exp(logParameters[4]);
        var second = Logistic((z - place) / width) - Logistic(-place / width);
        return first + (Math.Exp(logParameters[2]) * second);
    }

    private static double Logistic(double t)
    {
        return 1 / (1 + Math.Exp(-t));
    }
}
