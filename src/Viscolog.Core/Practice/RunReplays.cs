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

    /// <summary>Replays a run; each moment is worked out when it is asked for.</summary>
    /// <param name="run">The run. Entries that are void are left out, as if they never had been made; so are notes.</param>
    /// <param name="band">The band aimed at; null for the run's own.</param>
    /// <param name="history">Earlier runs.</param>
    public static IEnumerable<ReplayMoment> Of(Run run, ViscosityBand? band, ImmutableArray<Run> history)
    {
        var entries = run.Entries.Where(e => e.Counts && e is not Entry.Noted).ToImmutableArray();
        var number = 0;
        for (var i = 0; i < entries.Length; i++)
        {
            if (entries[i] is not Entry.Measured)
            {
                continue;
            }

            var rest = entries[(i + 1)..];
            var next = rest.IndexOf(rest.FirstOrDefault(e => e is Entry.Measured)!);
            yield return Moment(++number, run with { Entries = entries[..(i + 1)] }, next < 0 ? rest : rest[..(next + 1)], band, history);
        }
    }

    private static ReplayMoment Moment(int number, Run known, ImmutableArray<Entry> done, ViscosityBand? band, ImmutableArray<Run> history)
    {
        var thickener = Evidence.MainThickener(known with { Entries = [.. known.Entries, .. done] });
        var grams = done.OfType<Entry.Dosed>().Where(d => d.Thickener == thickener?.Name).Sum(d => d.Poured.Grams);
        var request = new StudyRequest(known) { Band = band, History = history, WhatIf = grams > 0 ? Mass.FromGrams(grams) : null };
        var outcome = Study.Of(request);
        if (outcome is StudyOutcome.Made { Study.NoAdvice: NoAdvice.TooFarToForecast })
        {
            // Grams too far beyond the range to be judged hide the advice otherwise.
            outcome = Study.Of(request with { WhatIf = null });
        }

        var (before, after) = (known.PotNow(), (known with { Entries = [.. known.Entries, .. done] }).PotNow());
        var name = thickener?.Name ?? "";
        return new(number, known, outcome, done)
        {
            DoseBefore = before.DoseOf(name),
            DoseAfter = after.DoseOf(name),
            Match = outcome.Advice is { Thickeners.Length: 1 } advice ? Match(advice, done, grams) : null,
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
/// <param name="Known">The run as it was known then.</param>
/// <param name="Outcome">The advice that this gives; had the same been asked then, with the same history.</param>
/// <param name="Done">What was done next, up to and with the next reading; empty at the end of the run.</param>
public sealed record ReplayMoment(int Number, Run Known, StudyOutcome Outcome, ImmutableArray<Entry> Done)
{
    /// <summary>The dose then.</summary>
    public required Dose DoseBefore { get; init; }

    /// <summary>The dose after what was done.</summary>
    public required Dose DoseAfter { get; init; }

    /// <summary>How the two compare; null where there was no advice.</summary>
    public required ReplayMatch? Match { get; init; }

    /// <summary>The advice; null where there was none.</summary>
    public Advice? Advice => Outcome.Advice;

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

    /// <summary>Thickener went in where none was advised.</summary>
    DosedAgainstAdvice,

    /// <summary>Something else than advised, but no thickener.</summary>
    Otherwise,
}
