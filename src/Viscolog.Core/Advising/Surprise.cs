using Viscolog.Core.Observing;
using Viscolog.Core.Pots;

namespace Viscolog.Core.Advising;

/// <summary>A reading so far from what was expected that it was more likely typed or taken wrongly.</summary>
/// <param name="Ratio">The reading over what was expected, the median.</param>
public sealed record Surprise(double Ratio)
{
    /// <summary>
    /// The chance of a reading so far off on its side below which it is a surprise: one in ten thousand on both together.
    /// </summary>
    private const double Least = 0.5e-4;

    /// <summary>What was perhaps typed wrongly.</summary>
    public Blunder Blunder => Blunders.Of(Ratio);

    /// <summary>Looks at a reading that would come next, by the posterior predictive distribution of a reading of this pot now.</summary>
    /// <param name="study">The study of the run as it is before the reading.</param>
    /// <param name="reading">The reading.</param>
    /// <returns>
    /// Null where nothing of the kind shows: it is within what was expected, it holds no body, or nothing was read before.
    /// </returns>
    public static Surprise? Of(Study study, Reading reading)
    {
        if (reading.Value is null || !study.IsRead || With(study, reading) is not { } after)
        {
            return null;
        }

        var (step, last) = (after.Steps[^1], after.Steps[^1].Readings[^1]);
        var expected = study.Posterior.At(study.Evidence.Steps[^1], last.WaitSeconds).Blurred(study.Posterior.Repeatability);
        var above = expected.ChanceAbove(last.Ln);
        return step.Place == study.Evidence.Steps[^1].Place && Math.Min(above, 1 - above) < Least
            ? new(Math.Exp(last.Ln - expected.Quantile(0.5)))
            : null;
    }

    /// <summary>The evidence with the reading; null where it can't come next or counts for nothing.</summary>
    private static Evidence? With(Study study, Reading reading)
    {
        if (study.Evidence.Run.Append(new Entry.Measured(reading)) is not Appended.To)
        {
            return null;
        }

        var run = study.Evidence.Run with { Entries = study.Evidence.Run.Entries.Add(new Entry.Measured(reading)) };
        var outcome = study.IsOfTwo ? Evidence.OfPair(run) : Evidence.Of(run, study.Evidence.Thickener);
        return outcome is EvidenceOutcome.Usable { Evidence: { } after } && after.ReadingCount > study.Evidence.ReadingCount ? after : null;
    }
}
