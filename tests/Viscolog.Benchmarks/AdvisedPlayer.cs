using System.Collections.Immutable;
using Viscolog.Benchmarks.Pots;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Benchmarks;

/// <summary>Does what the program says, asked by the same call that the command uses.</summary>
internal static class AdvisedPlayer
{
    private const int MostMoves = 60;

    /// <summary>Nobody reads earlier than this after stirring, and people read when they are done stirring, not when told to.</summary>
    private static readonly TimeSpan FirstReading = TimeSpan.FromSeconds(20);

    /// <param name="pot">The pot.</param>
    /// <param name="risk">The greatest chance of going over that an addition may carry.</param>
    /// <param name="earlier">Earlier runs.</param>
    /// <param name="asTold">
    /// Whether the first reading of a step is taken when the advice says so, and not as soon as the stirring is done.
    /// </param>
    public static Played Play(PracticePot pot, Percentage risk, ImmutableArray<Run> earlier, bool asTold)
    {
        int doses = 0, reads = 1, waits = 0, calls = 0;
        var held = new List<bool>();
        List<(double Stated, bool Came)> now = [], additions = [], stops = [], givenUp = [];
        var band = pot.Run.Target!.Band;
        Played Result() => new(doses, reads, waits)
        {
            Calls = calls,
            Held = held,
            Now = now,
            Additions = additions,
            Stops = stops,
            GivenUp = givenUp,
        };
        pot.Read(TimeSpan.Zero);
        for (var move = 0; move < MostMoves; move++)
        {
            calls++;
            var advice = Study.Of(new(pot.Run) { Risk = risk, History = earlier }).Advice!;
            var inBand = (advice.ChanceAllInBand.Fraction, pot.TrueBody >= band.Low && pot.TrueBody <= band.High);
            if (advice.Body.Now is { } stated)
            {
                now.Add((stated.Level.Fraction, pot.TrueBody >= stated.Low && pot.TrueBody <= stated.High));
            }

            switch (advice.Action)
            {
                case BenchAction.Add add:
                    pot.Add(add.Poured);
                    doses++;
                    held.Add(pot.TrueBody >= advice.Body.Expected!.Low && pot.TrueBody <= advice.Body.Expected.High);
                    additions.Add((advice.ChanceAnyOver.Fraction, pot.TrueBody > band.High));
                    pot.Read(!asTold && add.Standing > FirstReading ? FirstReading : add.Standing);
                    break;
                case BenchAction.Wait wait:
                    pot.Read(wait.More);
                    waits++;
                    break;
                case BenchAction.Measure measure:
                    pot.Read(measure.Standing ?? TimeSpan.FromSeconds(15));
                    break;
                case BenchAction.LetDown down:
                    pot.LetDown(down.Base);
                    doses++;
                    pot.Read(FirstReading);
                    break;
                case BenchAction.Stop:
                    stops.Add(inBand);
                    return Result();
                default:
                    givenUp.Add(inBand);
                    return Result();
            }

            reads++;
        }

        return Result();
    }
}
