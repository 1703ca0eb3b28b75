using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Curves;
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
        var request = new AdviceRequest(known) { Band = band, History = history, WhatIf = grams > 0 ? Mass.FromGrams(grams) : null };
        var outcome = Advisor.Advise(request);
        if (outcome is AdviceOutcome.Refused && grams > 0)
        {
            // Grams too far beyond the range to be judged hide the advice otherwise.
            outcome = Advisor.Advise(request with { WhatIf = null });
        }

        var (before, after) = (known.PotNow(), (known with { Entries = [.. known.Entries, .. done] }).PotNow());
        var name = thickener?.Name ?? "";
        return new(number, known, outcome, done)
        {
            DoseBefore = before.DoseOf(name),
            DoseAfter = after.DoseOf(name),
            Match = outcome is AdviceOutcome.Advised { Advice: var advice } ? Match(advice, done, grams) : null,
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
