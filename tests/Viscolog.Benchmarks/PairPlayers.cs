using Viscolog.Benchmarks.Pots;
using Viscolog.Core.Advising;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Benchmarks;

/// <summary>Who plays pots of two thickeners: rules without statistics, and the program's advice.</summary>
internal static class PairPlayers
{
    private const int MostMoves = 80;

    /// <summary>A pot is let down so many times at most.</summary>
    private const int MostLetDowns = 2;

    /// <summary>Steps of the rules in % of base: 0.06 of the usual range.</summary>
    private const double Step = 0.3;

    /// <summary>Body thickener until the body is in band, then string thickener until the string is.</summary>
    public static PairPlayed BodyFirst(PracticePair pot) => InTurn(pot, "A", "B");

    /// <summary>String thickener until the string is in band, then body thickener until the body is.</summary>
    public static PairPlayed StringFirst(PracticePair pot) => InTurn(pot, "B", "A");

    /// <summary>A small step of each in turn while it is wanted.</summary>
    public static PairPlayed Alternating(PracticePair pot)
    {
        var additions = 0;
        pot.Read(true, true);
        while (additions < MostMoves && (Wants(pot, "A") || Wants(pot, "B")))
        {
            foreach (var name in new[] { "A", "B" }.Where(n => Wants(pot, n)).ToArray())
            {
                if (Wants(pot, name))
                {
                    Pour(pot, name);
                    additions++;
                }
            }
        }

        return new(additions, additions + 1, additions + 1);
    }

    /// <summary>Does what the program says.</summary>
    public static PairPlayed Advised(PracticePair pot, Percentage risk)
    {
        int additions = 0, bodies = 1, strings = 1, calls = 0, letDowns = 0;
        var everOver = false;
        var held = new List<(bool, bool)>();
        var end = "moves";
        pot.Read(true, true);
        for (var move = 0; move < MostMoves; move++)
        {
            calls++;
            everOver |= pot.TrueBody > pot.Run.Target!.Band.High || pot.TrueString > pot.Run.TargetString!.High;
            var advice = Study.Of(new(pot.Run) { Risk = risk }).Advice!;
            if (advice.Action is BenchAction.Add add)
            {
                pot.Add(advice.Thickener.Name, add.Poured);
                additions++;
                var (body, length) = (advice.Body.Expected!, advice.StringLength!.Expected!);
                held.Add(
                    (pot.TrueBody >= body.Low && pot.TrueBody <= body.High, pot.TrueString >= length.Low && pot.TrueString <= length.High));
                pot.Read(true, true);
                (bodies, strings) = (bodies + 1, strings + 1);
            }
            else if (advice.Action is BenchAction.LetDown down && letDowns < MostLetDowns)
            {
                pot.LetDown(down.Base);
                (additions, letDowns) = (additions + 1, letDowns + 1);
                pot.Read(true, true);
                (bodies, strings) = (bodies + 1, strings + 1);
            }
            else if (advice.Action is BenchAction.Measure or BenchAction.Wait)
            {
                var asked = advice.Action is BenchAction.Measure { IsOfString: true };
                pot.Read(!asked, asked);
                (bodies, strings) = (bodies + (asked ? 0 : 1), strings + (asked ? 1 : 0));
            }
            else
            {
                end = advice.Action.GetType().Name;
                break;
            }
        }

        return new(additions, bodies, strings) { Calls = calls, Held = held, End = end, LetDowns = letDowns, EverOver = everOver };
    }

    private static PairPlayed InTurn(PracticePair pot, params string[] order)
    {
        var additions = 0;
        pot.Read(true, true);
        foreach (var name in order)
        {
            while (additions < MostMoves && Wants(pot, name))
            {
                Pour(pot, name);
                additions++;
            }
        }

        return new(additions, additions + 1, additions + 1);
    }

    private static bool Wants(PracticePair pot, string name)
    {
        var reading = ((Entry.Measured)pot.Run.Entries[^1]).Reading;
        return name == "A"
            ? ((InstrumentValue.Direct)reading.Value!).Viscosity < pot.Run.Target!.Band.Low
            : reading.StringLength < pot.Run.TargetString!.Low;
    }

    private static void Pour(PracticePair pot, string name)
    {
        pot.Add(name, Mass.FromGrams(pot.Run.BaseMass.Grams * Step / 100));
        pot.Read(true, true);
    }
}
