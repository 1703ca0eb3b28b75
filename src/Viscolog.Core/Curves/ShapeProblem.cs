using Viscolog.Core.Settling;

namespace Viscolog.Core.Curves;

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

    /// <summary>States the problem; a reading that the belief takes for a slip gets a slip's standard deviation.</summary>
    public static ShapeProblem Of(Belief belief, Shape shape)
    {
        var evidence = belief.Evidence;
        BodyReading[] all = [.. evidence.Steps.SelectMany(s => s.Readings)];
        var timed = all.Any(r => double.IsFinite(r.WaitSeconds));
        double[] priorMeans = [FirstLevel(all), .. shape.Parameters.Select(p => Math.Log(p.Median)), .. timed ? [Math.Log(BuildUp.PriorMedianSeconds)] : Array.Empty<double>()];
        double[] priorSpreads = [BeliefSettings.BaseLogSd, .. shape.Parameters.Select(p => p.LogSd), .. timed ? [BuildUp.PriorLogSd] : Array.Empty<double>()];
        return new(new(evidence, evidence.RangeTop, belief.Prior), shape, all, [.. all.Select(r => Sd(belief, r))], priorMeans, priorSpreads, timed);
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

    private static double FirstLevel(BodyReading[] all) => all.Length == 0 ? Math.Log(BeliefSettings.BaseMedian) : all[0].Ln;

    private static double Sd(Belief belief, BodyReading reading)
    {
        var expected = belief.At(belief.Evidence.Steps[reading.Step], reading.WaitSeconds).Quantile(0.5);
        var variance = (belief.Evidence.Repeatability * belief.Evidence.Repeatability) + reading.ExtraVariance;
        var slip = CurveFilter.SlipChance(reading.Ln - expected, variance) > 0.5;
        return Math.Sqrt(variance + (slip ? BeliefSettings.SlipSd * BeliefSettings.SlipSd : 0));
    }
}
