using Viscolog.Core.Quantities;

namespace Viscolog.Core.Practice;

/// <summary>What came of a game that has ended; counted by what was true, not by what was read.</summary>
public sealed record PracticeScore
{
    /// <summary>How it ended.</summary>
    public required PracticeVerdict Verdict { get; init; }

    /// <summary>Doses poured.</summary>
    public required int Doses { get; init; }

    /// <summary>Readings taken.</summary>
    public required int Readings { get; init; }

    /// <summary>Readings taken again of the same pot after more standing.</summary>
    public required int Waits { get; init; }

    /// <summary>Doses poured while more than 5 % of the body of the one before was still to come.</summary>
    public required int EarlyDoses { get; init; }

    /// <summary>The dose, counted from 1, that first brought the pot over; null where none did.</summary>
    public required int? WentOverAt { get; init; }

    /// <summary>Stirring and standing, in the game's time.</summary>
    public required TimeSpan Time { get; init; }

    /// <summary>The true settled body at the end.</summary>
    public required Viscosity Body { get; init; }

    /// <summary>Thickener poured in.</summary>
    public required Mass Poured { get; init; }

    /// <summary>Thickener poured in beyond what the aim needs of the base as it was at first.</summary>
    public required Mass Wasted { get; init; }

    /// <summary>Base added to let the pot down.</summary>
    public required Mass Base { get; init; }

    /// <summary>Base that would still bring it back to the aim; nothing where the pot is not over.</summary>
    public required Mass BaseToSave { get; init; }

    /// <summary>Everything in the pot at the end.</summary>
    public required Mass PotTotal { get; init; }

    /// <summary>Whether the pot was over at some time.</summary>
    public bool WentOver => WentOverAt is not null;

    /// <summary>Counts a game.</summary>
    /// <param name="session">The game.</param>
    /// <exception cref="ArgumentException">It has not ended.</exception>
    public static PracticeScore Of(PracticeSession session)
    {
        if (!session.HasEnded)
        {
            throw new ArgumentException("the game has not ended", nameof(session));
        }

        var (pot, truth) = (session.Pot, session.Game.Truth);
        var verdict = truth.IsOver(pot.Dose)
            ? PracticeVerdict.Over
            : pot.Settled < truth.Band.Low
            ? PracticeVerdict.StillShort
            : PracticeVerdict.InBand;
        var poured = Sum(session.Moves.OfType<PracticeMove.Dose>().Select(d => d.Poured));
        var needed = truth.Needed.Percent * truth.Base.Grams / 100;
        return new()
        {
            Verdict = verdict,
            Doses = session.Moves.OfType<PracticeMove.Dose>().Count(),
            Readings = session.Lines.Count(l => l.Shown is not null),
            Waits = session.Lines.Count(
                l => l is { Number: > 0, Shown: not null, Poured.Grams: 0, Base.Grams: 0 } && l.Stood > session.Lines[l.Number - 1].Stood),
            EarlyDoses = session.EarlyDoses,
            WentOverAt = session.WentOverAt,
            Time = session.Elapsed,
            Body = pot.Settled,
            Poured = poured,
            Wasted = Mass.FromGrams(Math.Max(0, pot.Thickener.Grams - needed)),
            Base = Sum(session.Moves.OfType<PracticeMove.LetDown>().Select(d => d.Base)),
            BaseToSave = verdict == PracticeVerdict.Over ? LetDownCost.BaseFor(pot.Thickener, pot.Base, truth.Needed) : Mass.None,
            PotTotal = pot.Base + pot.Thickener,
        };
    }

    private static Mass Sum(IEnumerable<Mass> masses) => masses.Aggregate(Mass.None, (sum, mass) => sum + mass);
}
