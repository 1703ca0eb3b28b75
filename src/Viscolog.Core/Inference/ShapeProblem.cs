using Viscolog.Core.Curves;
using Viscolog.Core.Fitting;
using Viscolog.Core.Observing;
using Viscolog.Core.Sampling;
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
    private readonly double _stretch;

    private ShapeProblem(
        Posterior posterior, Shape shape, BodyReading[] readings, double[] means, double[] spreads, bool buildsUp)
        : base(means.Length, readings.Length, means.Length)
    {
        (_shape, _readings, _means, _spreads, _buildsUp) = (shape, readings, means, spreads, buildsUp);
        _filter = new(posterior.Evidence, posterior.Evidence.RangeTop, posterior.Prior);
        _sds = [.. readings.Select(r => Sd(posterior, r))];
        _stretch = Median(posterior.Bodies.Select(d => d.Kinetics.Stretch));
    }

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

    /// <summary>The build-up; its stretch is the posterior's median. τ is 1 s where nothing builds up.</summary>
    public Kinetics KineticsOf(ReadOnlySpan<double> parameters) => new(_buildsUp ? Math.Exp(parameters[TimeConstantPlace]) : 1, _stretch);

    /// <summary>States the problem; a reading that the posterior takes for an outlier gets an outlier's standard deviation,
    /// and where it is further off than that, so much.</summary>
    public static ShapeProblem Of(Posterior posterior, Shape shape)
    {
        var evidence = posterior.Evidence;
        BodyReading[] all = [.. evidence.Steps.SelectMany(s => s.Readings)];
        var timed = all.Any(r => double.IsFinite(r.WaitSeconds));
        double[] Row(double level, IEnumerable<double> own, double timeConstant) => timed ? [level, .. own, timeConstant] : [level, .. own];
        var kinetics = KineticsPrior.Of(evidence.Thickener.Chemistry);
        var priorMeans = Row(FirstLevel(all), shape.Parameters.Select(p => Math.Log(p.Median)), Math.Log(kinetics.MedianSeconds));
        var priorSpreads = Row(PosteriorSettings.BaseLogSd, shape.Parameters.Select(p => p.LogSd), kinetics.Spread);
        return new(posterior, shape, all, priorMeans, priorSpreads, timed);
    }

    /// <inheritdoc/>
    public override void Residuals(ReadOnlySpan<double> parameters, Span<double> residuals)
    {
        var kinetics = KineticsOf(parameters);
        _filter.Prepare(_shape, parameters.Slice(PlaceOf(0), _shape.Parameters.Length), kinetics);
        for (var i = 0; i < _readings.Length; i++)
        {
            var rise = _filter.RiseAfter(_readings[i].Step, _readings[i].LogWait, kinetics);
            residuals[i] = (_readings[i].Ln - parameters[BasePlace] - rise) / _sds[i];
        }

        for (var j = 0; j < _means.Length; j++)
        {
            residuals[_readings.Length + j] = (parameters[j] - _means[j]) / _spreads[j];
        }
    }

    private static double Median(IEnumerable<double> values) => values.Order().ElementAt(MonteCarloSettings.Draws / 2);

    private static double FirstLevel(BodyReading[] all) => all.Length == 0 ? Math.Log(PosteriorSettings.BaseMedian) : all[0].Ln;

    private static double Sd(Posterior posterior, BodyReading reading)
    {
        var expected = posterior.At(posterior.Evidence.Steps[reading.Step], reading.WaitSeconds).Quantile(0.5);
        var variance = (posterior.Repeatability * posterior.Repeatability) + reading.ExtraVariance
            + Math.Pow(posterior.CoefficientSd * reading.Distance, 2);
        var off = reading.Ln - expected;
        var outlier = CurveFilter.OutlierChance(off, variance) > 0.5;
        return Math.Sqrt(variance + (outlier ? Math.Max(PosteriorSettings.OutlierSd * PosteriorSettings.OutlierSd, off * off) : 0));
    }
}
