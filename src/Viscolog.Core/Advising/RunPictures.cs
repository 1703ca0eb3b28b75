using System.Collections.Immutable;
using Viscolog.Core.Inference;
using Viscolog.Core.Limits;
using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Computes what a chart of a run shows.</summary>
public static class RunPictures
{
    private const int CurveSamples = 80;
    private const int WaySamples = 40;

    /// <summary>The picture of a run and its posterior.</summary>
    /// <param name="posterior">The posterior.</param>
    /// <param name="band">The band aimed at; null for none.</param>
    /// <param name="advice">The advice, for its limit and its arrow; null for none.</param>
    /// <param name="level">Level of the bands.</param>
    public static RunPicture Of(Posterior posterior, ViscosityBand? band, Advice? advice, Percentage level)
    {
        var evidence = posterior.Evidence;
        if (evidence.StringThickener is not null)
        {
            return new(evidence.Run.Name, evidence.Thickener.Name, evidence.Run.ReferenceTemperatureInForce)
            {
                Target = band,
                TargetString = evidence.Run.TargetString,
                Plane = DosePlanes.Of(posterior, advice, level),
            };
        }

        var steps = evidence.Steps.Where(s => s.Readings.Length > 0).ToImmutableArray();
        return new(evidence.Run.Name, evidence.Thickener.Name, evidence.Run.ReferenceTemperatureInForce)
        {
            Method = MethodWords(evidence.Run.MethodInForce),
            Target = band,
            Limit = advice?.Thickener.Limit ?? DoseLimits.Of(posterior, band),
            Next = Arrow(advice),
            Curve = Curve(posterior, band, advice, level),
            Steps = [.. steps.Select(s => Step(posterior, s, LongestWait(steps), level))],
            LetDowns = PicturedLetDown.Among(evidence.Steps.Select(s => (Dose.FromPercent(s.Dose), Settled(posterior, s)))),
            Readings = [.. steps.SelectMany(s => s.Readings.Select(r => Reading(posterior, s, r)))],
            Strings = [.. Strings(evidence.Run, evidence.Thickener)],
            TargetString = evidence.Run.TargetString,
        };
    }

    private static IEnumerable<PicturedString> Strings(Run run, Thickener thickener) =>
        from step in Pots.Steps.Of(run).Index()
        from placed in step.Item.Readings
        where placed.Reading.StringLength is not null
        select new PicturedString(step.Index, step.Item.Pot.DoseOf(thickener.Name), placed.Reading.StringLength!.Value);

    private static string? MethodWords(Method method)
        => method == Method.Direct ? null : method.TellsYieldStress ? $"{method.Id}: yield stress over 1/s" : method.Id;

    private static NextIncrement? Arrow(Advice? advice) => advice is { Body: { Now: { } now, Expected: { } expected } }
        ? advice.Action switch
        {
            BenchAction.Add { After: var after } => new(advice.Thickener.DoseNow, now.Median, after, expected),
            BenchAction.LetDown { After: var after } => new(advice.Thickener.DoseNow, now.Median, after, expected),
            _ => null,
        }
        : null;

    /// <summary>The curve from no thickener to a little beyond the last dose read, advised or needed for the aim, and to the range top
    /// where that is near.</summary>
    private static ImmutableArray<CurveSample> Curve(Posterior posterior, ViscosityBand? band, Advice? advice, Percentage level)
    {
        var top = posterior.Evidence.Thickener.UsualRange.Top.Percent;
        var reached = posterior.Evidence.Steps.Max(s => s.Dose);
        if (advice?.Action is BenchAction.Add add)
        {
            reached = Math.Max(reached, add.After.Percent);
        }

        if (band is not null && posterior.DoseFor(band.Aim, level) is { } wanted)
        {
            reached = Math.Max(reached, Math.Min(wanted.Median.Percent, top));
        }

        var end = Math.Max(reached + (0.1 * top), Math.Min(top, 1.5 * reached));
        return [.. Enumerable.Range(0, CurveSamples + 1).Select(i =>
        {
            var dose = Dose.FromPercent(end * i / CurveSamples);
            return new CurveSample(dose, posterior.BodyAt(dose, level), posterior.ReadingAt(dose, level));
        })];
    }

    /// <summary>How long the ways to the settled values are drawn: somewhat beyond the longest standing time of the run, in s.</summary>
    private static double LongestWait(ImmutableArray<EvidenceStep> steps)
        => Math.Max(30, 1.4 * steps.SelectMany(s => s.Readings).Select(r => r.WaitSeconds).Where(double.IsFinite).DefaultIfEmpty(0).Max());

    private static PicturedStep Step(Posterior posterior, EvidenceStep step, double longest, Percentage level)
    {
        ImmutableArray<TimedEstimate> way = step.Readings.All(r => double.IsInfinity(r.WaitSeconds))
            ? []
            : [.. Enumerable.Range(0, WaySamples + 1).Select(i =>
            {
                var seconds = longest * i / WaySamples;
                return new TimedEstimate(TimeSpan.FromSeconds(seconds), posterior.At(step, seconds).ToEstimate(level));
            })];
        return new(step.Place, Dose.FromPercent(step.Dose), posterior.At(step, double.PositiveInfinity).ToEstimate(level), way);
    }

    private static Viscosity Settled(Posterior posterior, EvidenceStep step)
        => Viscosity.FromLn(posterior.At(step, double.PositiveInfinity).Quantile(0.5));

    private static PicturedReading Reading(Posterior posterior, EvidenceStep step, BodyReading reading)
    {
        var expected = posterior.At(step, reading.WaitSeconds).Quantile(0.5);
        var deviation = reading.Ln - expected;
        var variance = (posterior.Repeatability * posterior.Repeatability) + reading.ExtraVariance;
        return new(
            step.Place,
            Dose.FromPercent(step.Dose),
            ((Entry.Measured)posterior.Evidence.Run.Entries[reading.Entry]).Reading.Wait,
            Viscosity.FromLn(reading.Ln),
            Viscosity.FromLn(expected),
            deviation / Math.Sqrt(variance),
            CurveFilter.OutlierChance(deviation, variance) > 0.5)
        {
            Entry = reading.Entry,
        };
    }
}
