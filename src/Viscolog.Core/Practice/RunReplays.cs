using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Practice;

/// <summary>Goes through a real run reading by reading: what was known, what that advises, what was done.</summary>
public static class RunReplays
{
    /// <summary>Grams that differ by less than this part of the advised ones count as the advised ones.</summary>
    private const double SamePart = 0.1;

    /// <summary>
    /// Replays a run; each moment is worked out when it is asked for. Of a long run a sample is judged (<see cref="ReplaySample"/>), so
    /// that it takes time in proportion to its readings.
    /// </summary>
    /// <param name="run">The run. Entries that are void are left out, as if they never had been made; so are notes.</param>
    /// <param name="band">The band aimed at; null for the run's own.</param>
    /// <param name="history">Earlier runs.</param>
    public static IEnumerable<ReplayMoment> Of(Run run, ViscosityBand? band, ImmutableArray<Run> history)
    {
        var whole = run with { Entries = [.. run.Entries.Where(e => e.Counts && e is not Entry.Noted)] };
        int[] readings = [.. Enumerable.Range(0, whole.Entries.Length).Where(i => whole.Entries[i] is Entry.Measured)];
        var judged = ReplaySample.Of(whole);
        var (after, place) = (Pot.With(run.BaseMass), 0);
        for (var i = 0; i < readings.Length; i++)
        {
            var known = readings[i] + 1;
            var before = Through(after, place, known);
            place = i + 1 < readings.Length ? readings[i + 1] + 1 : whole.Entries.Length;
            after = Through(before, known, place);
            yield return Moment(
                new(i + 1, whole, known, whole.Entries[known..place]),
                (before, after),
                judged.Contains(i + 1),
                band,
                history);
        }

        Pot Through(Pot pot, int from, int to)
        {
            for (var i = from; i < to; i++)
            {
                pot = whole.After(pot, whole.Entries[i]);
            }

            return pot;
        }
    }

    private static ReplayMoment Moment(
        ReplayMoment told, (Pot Before, Pot After) pots, bool isJudged, ViscosityBand? band, ImmutableArray<Run> history)
    {
        var thickener = Evidence.MainThickener(told.Run, pots.After);
        var name = thickener?.Name ?? "";
        var moment = told with { DoseBefore = pots.Before.DoseOf(name), DoseAfter = pots.After.DoseOf(name) };
        if (!isJudged)
        {
            return moment;
        }

        var grams = told.Done.OfType<Entry.Dosed>().Where(d => told.Run.NameNow(d.Thickener) == thickener?.Name).Sum(d => d.Poured.Grams);
        var request = new StudyRequest(told.Known) { Band = band, History = history, WhatIf = grams > 0 ? Mass.FromGrams(grams) : null };
        var outcome = Study.Of(request);
        if (outcome is StudyOutcome.Made { Study: { NoAdvice: NoAdvice.TooFarToForecast } study })
        {
            // Grams too far beyond the range to be judged hide the advice otherwise.
            outcome = new StudyOutcome.Made(study.WithoutWhatIf());
        }

        return moment with
        {
            Outcome = outcome,
            Match = outcome.Advice is { Thickeners.Length: 1 } advice ? Match(advice, told.Done, grams) : null,
        };
    }

    private static ReplayMatch Match(Advice advice, ImmutableArray<Entry> done, double grams)
    {
        if (done.IsEmpty)
        {
            return ReplayMatch.Ended;
        }

        if (advice.Action is BenchAction.Add add)
        {
            return grams <= 0 ? ReplayMatch.Otherwise
                : grams > add.Poured.Grams * (1 + SamePart) ? ReplayMatch.More
                : grams < add.Poured.Grams * (1 - SamePart) ? ReplayMatch.Less
                : ReplayMatch.AsAdvised;
        }

        if (grams > 0)
        {
            return ReplayMatch.DosedAgainstAdvice;
        }

        var letDown = done.Any(e => e is Entry.LetDown);
        var asAdvised = advice.Action switch
        {
            BenchAction.LetDown => letDown,
            BenchAction.Wait or BenchAction.Measure => !letDown && done.Any(e => e is Entry.Measured),
            _ => false,
        };
        return asAdvised ? ReplayMatch.AsAdvised : ReplayMatch.Otherwise;
    }
}

/// <summary>One moment of a real run: after a reading, before what was done next.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Run">The whole run, without what does not count.</param>
/// <param name="KnownEntries">How many of its entries were known then; the last of them is the reading.</param>
/// <param name="Done">What was done next, up to and with the next reading; empty at the end of the run.</param>
public sealed record ReplayMoment(int Number, Run Run, int KnownEntries, ImmutableArray<Entry> Done)
{
    /// <summary>The run as it was known then.</summary>
    public Run Known => Run with { Entries = Run.Entries[..KnownEntries] };

    /// <summary>The reading.</summary>
    public Reading Reading => ((Entry.Measured)Run.Entries[KnownEntries - 1]).Reading;

    /// <summary>What could be said of the pot then, had it been asked with the same history; null where it was not judged.</summary>
    public StudyOutcome? Outcome { get; init; }

    /// <summary>The dose then.</summary>
    public Dose DoseBefore { get; init; }

    /// <summary>The dose after what was done.</summary>
    public Dose DoseAfter { get; init; }

    /// <summary>How the two compare; null where there was no advice.</summary>
    public ReplayMatch? Match { get; init; }

    /// <summary>The advice; null where there was none.</summary>
    public Advice? Advice => Outcome?.Advice;

    /// <summary>What the grams that were poured promised then; null where none were, or where nothing could be told.</summary>
    public WhatIf? Poured => Advice?.WhatIf;
}

/// <summary>How what was done compares with what was advised.</summary>
public enum ReplayMatch
{
    /// <summary>Nothing was done any more.</summary>
    Ended,

    /// <summary>As advised.</summary>
    AsAdvised,

    /// <summary>More thickener than advised.</summary>
    More,

    /// <summary>Less thickener than advised.</summary>
    Less,

    /// <summary>Thickener was added where none was advised.</summary>
    DosedAgainstAdvice,

    /// <summary>Something else than advised, but no thickener.</summary>
    Otherwise,
}
