using Viscolog.Core.Curves;
using Viscolog.Core.Fitting;
using Viscolog.Core.Observing;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Inference;

/// <summary>One shape on a run's evidence: data rows over the repeatability, then a row for each prior.</summary>
internal sealed class ShapeProblem : ResidualProblem
{
    private readonly CurveFilter _filter;
    private readonly Shape _shape;
    private readonly BodyReading[] _readings;
    private readonly double[] _sds;
    private readonly double[] _means;
    private readonly double[] _spreads;
    private readonly bool _buildsUp;

    private ShapeProblem(
        CurveFilter filter, Shape shape, BodyReading[] readings, double[] sds, double[] means, double[] spreads, bool buildsUp)
        : base(means.Length, readings.Length, means.Length)
        => (_filter, _shape, _readings, _sds, _means, _spreads, _buildsUp) = (filter, shape, readings, sds, means, spreads, buildsUp);

    /// <summary>The prior's means: where a fit starts.</summary>
    public double[] Start => [.. _means];

    /// <summary>The prior's standard deviations.</summary>
    public double[] Spreads => [.. _spreads];

    /// <summary>Whether there is a parameter for ln τ: the last one.</summary>
    public bool BuildsUp => _buildsUp;

    /// <summary>Place of ln of the base's body among the parameters.</summary>
    public static int BasePlace => 0;

    /// <summary>Place of ln τ, where there is one.</summary>
    public int TimeConstantPlace => ParameterCount - 1;

    /// <summary>Place of the logarithm of one of the shape's parameters.</summary>
    public static int PlaceOf(int shapeParameter) => BasePlace + 1 + shapeParameter;

    /// <summary>τ in s; 1 where nothing builds up.</summary>
    public double TimeConstant(IReadOnlyList<double> parameters) => _buildsUp ? Math.Exp(parameters[TimeConstantPlace]) : 1;

    /// <summary>States the problem; a reading that the posterior takes for an outlier gets an outlier's standard deviation.</summary>
    public static ShapeProblem Of(Posterior posterior, Shape shape)
    {
        var evidence = posterior.Evidence;
        BodyReading[] all = [.. evidence.Steps.SelectMany(s => s.Readings)];
        var timed = all.Any(r => double.IsFinite(r.WaitSeconds));
        double[] Row(double level, IEnumerable<double> own, double timeConstant) => timed ? [level, .. own, timeConstant] : [level, .. own];
        var priorMeans = Row(FirstLevel(all), shape.Parameters.Select(p => Math.Log(p.Median)), Math.Log(BuildUp.PriorMedianSeconds));
        var priorSpreads = Row(PosteriorSettings.BaseLogSd, shape.Parameters.Select(p => p.LogSd), BuildUp.PriorLogSd);
        var filter = new CurveFilter(evidence, evidence.RangeTop, posterior.Prior);
        return new(filter, shape, all, [.. all.Select(r => Sd(posterior, r))], priorMeans, priorSpreads, timed);
    }

    /// <inheritdoc/>
    public override void Residuals(ReadOnlySpan<double> parameters, Span<double> residuals)
    {
        var timeConstant = _buildsUp ? Math.Exp(parameters[TimeConstantPlace]) : 1;
        _filter.Prepare(_shape, parameters.Slice(PlaceOf(0), _shape.Parameters.Length), timeConstant);
        for (var i = 0; i < _readings.Length; i++)
        {
            var rise = _filter.RiseAfter(_readings[i].Step, _readings[i].WaitSeconds, timeConstant);
            residuals[i] = (_readings[i].Ln - parameters[BasePlace] - rise) / _sds[i];
        }

        for (var j = 0; j < _means.Length; j++)
        {
            residuals[_readings.Length + j] = (parameters[j] - _means[j]) / _spreads[j];
        }
    }

    private static double FirstLevel(BodyReading[] all) => all.Length == 0 ? Math.Log(PosteriorSettings.BaseMedian) : all[0].Ln;

    private static double Sd(Posterior posterior, BodyReading reading)
    {
        var expected = posterior.At(posterior.Evidence.Steps[reading.Step], reading.WaitSeconds).Quantile(0.5);
        var variance = (posterior.Evidence.Repeatability * posterior.Evidence.Repeatability) + reading.ExtraVariance;
        var outlier = CurveFilter.OutlierChance(reading.Ln - expected, variance) > 0.5;
        return Math.Sqrt(variance + (outlier ? PosteriorSettings.OutlierSd * PosteriorSettings.OutlierSd : 0));
    }
}
