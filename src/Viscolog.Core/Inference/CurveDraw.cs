using System.Diagnostics.CodeAnalysis;
using Viscolog.Core.Curves;

namespace Viscolog.Core.Inference;

/// <summary>
/// One draw of one thickener's curve: shape, time constant, model discrepancy, and the level along the doses that the readings leave.
/// </summary>
internal sealed class CurveDraw : BodyDraw
{
    private readonly Shape _shape;
    private readonly double[] _parameters;
    private readonly double _walk;
    private readonly double[] _doses;
    private readonly double[] _means;
    private readonly double[] _variances;
    private readonly double[] _neighbours;

    [SetsRequiredMembers]
    public CurveDraw(int shapeIndex, CurveParameters draw, CurveFilter filter)
    {
        ShapeIndex = shapeIndex;
        _shape = Shapes.All[shapeIndex];
        _parameters = new double[draw.LogShape.Length];
        Shape.Exponentiate(draw.LogShape, _parameters);
        (Kinetics, Repeatability, CoefficientOff) = filter.NuisanceOf(draw);
        _walk = draw.Discrepancy * draw.Discrepancy;
        _doses = filter.SortedDoses;
        _means = new double[_doses.Length];
        _variances = new double[_doses.Length];
        _neighbours = new double[_doses.Length];
        filter.LogLikelihood(_shape, draw, _means, _variances);
        Changes = filter.Changes();
        Smooth();
    }

    /// <inheritdoc/>
    public override double? PeakDose => _shape.PeakDose(_parameters);

    /// <inheritdoc/>
    public override (double Mean, double Variance) At(double body, double strings) => At(body);

    /// <summary>Mean and variance of the settled ln body at a dose over the range top.</summary>
    public (double Mean, double Variance) At(double dose)
    {
        var (level, variance) = Level(dose);
        return (level + _shape.RiseOf(_parameters, dose), variance);
    }

    /// <summary>
    /// Mean and variance of the level at a dose over the range top: a Brownian bridge between readings, a free walk outside them.
    /// </summary>
    public (double Mean, double Variance) Level(double dose)
    {
        var last = _doses.Length - 1;
        if (dose >= _doses[last])
        {
            return (_means[last], _variances[last] + (_walk * (dose - _doses[last])));
        }

        if (dose <= _doses[0])
        {
            return (_means[0], _variances[0] + (_walk * (_doses[0] - dose)));
        }

        var right = 1;
        while (_doses[right] < dose)
        {
            right++;
        }

        var gap = _doses[right] - _doses[right - 1];
        var part = (dose - _doses[right - 1]) / gap;
        var mean = ((1 - part) * _means[right - 1]) + (part * _means[right]);
        var variance = ((1 - part) * (1 - part) * _variances[right - 1]) + (part * part * _variances[right])
            + (2 * part * (1 - part) * _neighbours[right - 1]) + (_walk * gap * part * (1 - part));
        return (mean, variance);
    }

    /// <summary>Rauch, Tung and Striebel's smoother (AIAA Journal 3 (1965) 1445–1450), with the covariance of _neighbours.</summary>
    private void Smooth()
    {
        for (var i = _doses.Length - 2; i >= 0; i--)
        {
            var predicted = _variances[i] + (_walk * (_doses[i + 1] - _doses[i]));
            var gain = predicted > 0 ? _variances[i] / predicted : 0;
            _means[i] += gain * (_means[i + 1] - _means[i]);
            _neighbours[i] = gain * _variances[i + 1];
            _variances[i] += gain * gain * (_variances[i + 1] - predicted);
        }
    }
}
