using Viscolog.Core.Curves;
using Viscolog.Core.Fitting;
using Viscolog.Core.Observing;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Inference;

/// <summary>One shape on a run's evidence: data rows over the repeatability, then a row for each prior.</summary>
internal sealed class ShapeProblem : ResidualProblem
{
    private readonly CurveFilter filter;
    private readonly Shape shape;
    private readonly BodyReading[] readings;
    private readonly double[] sds;
    private readonly double[] means;
    private readonly double[] spreads;
    private readonly bool buildsUp;

    private ShapeProblem(CurveFilter filter, Shape shape, BodyReading[] readings, double[] sds, double[] means, double[] spreads, bool buildsUp)
        : base(means.Length, readings.Length, means.Length)
        => (this.filter, this.shape, this.readings, this.sds, this.means, this.spreads, this.buildsUp) = (filter, shape, readings, sds, means, spreads, buildsUp);

    /// <summary>The prior's means: where a fit starts.</summary>
    public double[] Start => [.. means];

    /// <summary>The prior's standard deviations.</summary>
    public double[] Spreads => [.. spreads];

    /// <summary>Whether the last parameter is ln τ.</summary>
    public bool BuildsUp => buildsUp;

    /// <summary>States the problem; a reading that the posterior takes for an outlier gets an outlier's standard deviation.</summary>
    public static ShapeProblem Of(Posterior posterior, Shape shape)
    {
        var evidence = posterior.Evidence;
        BodyReading[] all = [.. evidence.Steps.SelectMany(s => s.Readings)];
        var timed = all.Any(r => double.IsFinite(r.WaitSeconds));
        double[] priorMeans = [FirstLevel(all), .. shape.Parameters.Select(p => Math.Log(p.Median)), .. timed ? [Math.Log(BuildUp.PriorMedianSeconds)] : Array.Empty<double>()];
        double[] priorSpreads = [PosteriorSettings.BaseLogSd, .. shape.Parameters.Select(p => p.LogSd), .. timed ? [BuildUp.PriorLogSd] : Array.Empty<double>()];
        return new(new(evidence, evidence.RangeTop, posterior.Prior), shape, all, [.. all.Select(r => Sd(posterior, r))], priorMeans, priorSpreads, timed);
    }

    /// <inheritdoc/>
    public override void Residuals(ReadOnlySpan<double> parameters, Span<double> residuals)
    {
        var timeConstant = buildsUp ? Math.Exp(parameters[^1]) : 1;
        filter.Prepare(shape, parameters.Slice(1, shape.Parameters.Length), timeConstant);
        for (var i = 0; i < readings.Length; i++)
        {
            residuals[i] = (readings[i].Ln - parameters[0] - filter.RiseAfter(readings[i].Step, readings[i].WaitSeconds, timeConstant)) / sds[i];
        }

        for (var j = 0; j < means.Length; j++)
        {
            residuals[readings.Length + j] = (parameters[j] - means[j]) / spreads[j];
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
