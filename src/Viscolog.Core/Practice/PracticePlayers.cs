using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Practice;

/// <summary>Players that show what comes of their habits. Each stirs 10 s.</summary>
public static class PracticePlayers
{
    private const int MostMoves = 60;
    private const double FirstPercent = 0.5;
    private const double LeastPercent = 0.05;
    private const double BoldPercent = 1;
    private static readonly TimeSpan Stirring = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan Hasty = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Patient = TimeSpan.FromMinutes(3);

    /// <summary>
    /// Reads 5 s after stirring and takes that for the body: pours to where a straight line in ln through the last two readings meets the
    /// aim, at
    /// most 1 % of the base at once and not beyond the usual range. In band by such a reading it stops, and looks again after 3 min.
    /// </summary>
    public static PracticePath Impatient(PracticeGame game)
    {
        var session = Do(PracticeSession.Of(game), new PracticeMove.Read());
        var percent = FirstPercent;
        for (var i = 0; i < MostMoves && LastLn(session) < game.Band.Low.Ln && RoomLeft(session) > LeastPercent; i++)
        {
            var before = LastLn(session);
            var poured = Math.Min(percent, RoomLeft(session));
            session = Pour(session, poured, Hasty);
            var slope = Math.Max(LeastPercent, (LastLn(session) - before) / poured);
            percent = Math.Clamp((game.Band.Aim.Ln - LastLn(session)) / slope, LeastPercent, BoldPercent);
        }

        session = Do(session, new PracticeMove.Wait(Patient), new PracticeMove.Read(), new PracticeMove.End());
        return PracticePath.Of(PracticePlayer.Impatient, session);
    }

    /// <summary>
    /// Pours 1 % of the base at a time, waits 3 min, reads, and stops when a reading is in band or over it, or at the end of the usual
    /// range.
    /// </summary>
    public static PracticePath Bold(PracticeGame game)
    {
        var session = Do(PracticeSession.Of(game), new PracticeMove.Read());
        for (var i = 0; i < MostMoves && LastLn(session) < game.Band.Low.Ln && RoomLeft(session) > LeastPercent; i++)
        {
            session = Pour(session, BoldPercent, Patient);
        }

        return PracticePath.Of(PracticePlayer.Bold, Do(session, new PracticeMove.End()));
    }

    /// <summary>Does what the program advises, asked by the same call that the command uses.</summary>
    public static PracticePath Advised(PracticeGame game)
    {
        var session = Do(PracticeSession.Of(game), new PracticeMove.Read());
        var followed = new List<Advice>();
        for (var i = 0; i < MostMoves && Study.Of(new(session.Run)).Advice is { } advice; i++)
        {
            if (Follow(session, advice) is not { } next)
            {
                break;
            }

            followed.Add(advice);
            session = next;
        }

        return PracticePath.Of(PracticePlayer.Advised, Do(session, new PracticeMove.End()), followed);
    }

    /// <summary>Does what a piece of advice says, up to the next reading; null where it says to stop.</summary>
    private static PracticeSession? Follow(PracticeSession session, Advice advice) => advice.Action switch
    {
        BenchAction.Add add => Do(session, new PracticeMove.Dose(add.Poured), new PracticeMove.Stir(Stirring),
            new PracticeMove.Wait(add.Standing), new PracticeMove.Read()),
        BenchAction.LetDown down => Do(session, new PracticeMove.LetDown(down.Base), new PracticeMove.Stir(Stirring),
            new PracticeMove.Wait(Patient), new PracticeMove.Read()),
        BenchAction.Wait wait => Do(session, new PracticeMove.Wait(wait.More), new PracticeMove.Read()),
        BenchAction.Measure => Do(session, new PracticeMove.Wait(TimeSpan.FromSeconds(15)), new PracticeMove.Read()),
        _ => null,
    };

    private static PracticeSession Pour(PracticeSession session, double percent, TimeSpan standing)
    {
        var scale = session.Run.ScaleStepInForce.Grams;
        var grams = Math.Max(scale, Math.Round(session.Game.Start.BaseMass.Grams * percent / 100 / scale) * scale);
        return Do(session, new PracticeMove.Dose(Mass.FromGrams(Math.Round(grams, 6))), new PracticeMove.Stir(Stirring),
            new PracticeMove.Wait(standing), new PracticeMove.Read());
    }

    private static PracticeSession Do(PracticeSession session, params PracticeMove[] moves)
    {
        var turn = session.Take(moves);
        return turn.Refusal is null ? turn.Session : throw new InvalidOperationException(turn.Refusal.ToString());
    }

    /// <summary>What is left of the usual range, in % of base.</summary>
    private static double RoomLeft(PracticeSession session) => session.Game.Truth.RangeTop.Percent - session.DoseNow.Percent;

    /// <summary>ln of the last reading.</summary>
    private static double LastLn(PracticeSession session) => session.Lines[^1].Shown!.Value.Ln;
}
