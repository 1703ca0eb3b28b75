using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;

namespace Viscolog.Benchmarks;

/// <summary>Does what the program says, asked by the same call that the command uses.</summary>
internal static class AdvisedPlayer
{
    private const int MostMoves = 60;

    /// <summary>Nobody reads earlier than this after stirring, and people read when they are done stirring, not when told to.</summary>
    private static readonly TimeSpan FirstReading = TimeSpan.FromSeconds(20);

    public static Played Play(PracticePot pot, Percentage risk, ImmutableArray<Run> earlier)
    {
        int doses = 0, reads = 1, waits = 0, calls = 0;
        var held = new List<bool>();
        pot.Read(TimeSpan.Zero);
        for (var move = 0; move < MostMoves; move++)
        {
            calls++;
            var advice = Study.Of(new(pot.Run) { Risk = risk, History = earlier }).Advice!;
            switch (advice.Action)
            {
                case BenchAction.Add add:
                    pot.Add(add.Poured);
                    doses++;
                    held.Add(pot.TrueBody >= advice.Body.Expected!.Low && pot.TrueBody <= advice.Body.Expected.High);
                    pot.Read(add.Standing > FirstReading ? FirstReading : add.Standing);
                    break;
                case BenchAction.Wait wait:
                    pot.Read(wait.More);
                    waits++;
                    break;
                case BenchAction.Measure measure:
                    pot.Read(measure.Standing ?? TimeSpan.FromSeconds(15));
                    break;
                default:
                    return new(doses, reads, waits) { Calls = calls, Held = held };
            }

            reads++;
        }

        return new(doses, reads, waits) { Calls = calls, Held = held };
    }
}
