using Viscolog.Core.Curves;

namespace Viscolog.Core.Inference;

/// <summary>One draw: a curve with its time constant, its discrepancy, and the level along the doses that the readings leave.</summary>
internal sealed class CurveDraw
{
    private readonly Shape shape;
    private readonly double[] parameters;
    private readonly double walk;
    private readonly double[] doses;
    private readonly double[] means;
    private readonly double[] variances;
    private readonly double[] neighbours;

    public CurveDraw(int shapeIndex, double[] draw, CurveFilter filter)
    {
        ShapeIndex = shapeIndex;
        shape = Shapes.All[shapeIndex];
        var logParameters = draw.AsSpan(0, draw.Length - Prior.Extra);
        parameters = new double[logParameters.Length];
        Shape.Exponentiate(logParameters, parameters);
        TimeConstant = Math.Exp(draw[^2]);
        var discrepancy = Math.Exp(draw[^1]);
        walk = discrepancy * discrepancy;
        doses = filter.SortedDoses;
        means = new double[doses.Length];
        variances = new double[doses.Length];
        neighbours = new double[doses.Length];
        filter.Prepare(shape, logParameters, TimeConstant);
        filter.LogLikelihood(TimeConstant, discrepancy, means, variances);
        Rises = filter.RiseAt.ToArray();
        Starts = filter.StartOf.ToArray();
        Smooth();
    }

    /// <summary>Place of the shape in <see cref="Shapes.All"/>.</summary>
    public int ShapeIndex { get; }

    /// <summary>τ in s.</summary>
    public double TimeConstant { get; }

    /// <summary>Rise at each step in order of time.</summary>
    public double[] Rises { get; }

    /// <summary>Rise at which each step's build-up starts.</summary>
    public double[] Starts { get; }

    /// <summary>Mean and variance of the settled ln body at a dose over the range top.</summary>
    public (double Mean, double Variance) At(double dose)
    {
        var (level, variance) = Level(dose);
        return (level + shape.RiseOf(parameters, dose), variance);
    }

    /// <summary>Dose over the range top at which a rise-and-fall shape is greatest; only for that shape.</summary>
    public double PeakDose() => parameters[1];

    /// <summary>Mean and variance of the level at a dose over the range top: a Brownian bridge between readings, a free walk outside them.</summary>
    public (double Mean, double Variance) Level(double dose)
    {
        var last = doses.Length - 1;
        if (dose >= doses[last])
        {
            return (means[last], variances[last] + (walk * (dose - doses[last])));
        }

        if (dose <= doses[0])
        {
            return (means[0], variances[0] + (walk * (doses[0] - dose)));
        }

        var right = 1;
        while (doses[right] < dose)
        {
            right++;
        }

        var gap = doses[right] - doses[right - 1];
        var part = (dose - doses[right - 1]) / gap;
        var mean = ((1 - part) * means[right - 1]) + (part * means[right]);
        var variance = ((1 - part) * (1 - part) * variances[right - 1]) + (part * part * variances[right])
            + (2 * part * (1 - part) * neighbours[right - 1]) + (walk * gap * part * (1 - part));
        return (mean, variance);
    }

    /// <summary>Rauch, Tung and Striebel's smoother (AIAA Journal 3 (1965) 1445–1450), with the covariance of neighbours.</summary>
    private void Smooth()
    {
        for (var i = doses.Length - 2; i >= 0; i--)
        {
            var predicted = variances[i] + (walk * (doses[i + 1] - doses[i]));
            var gain = predicted > 0 ? variances[i] / predicted : 0;
            means[i] += gain * (means[i + 1] - means[i]);
            neighbours[i] = gain * variances[i + 1];
            variances[i] += gain * gain * (variances[i + 1] - predicted);
        }
    }
}
