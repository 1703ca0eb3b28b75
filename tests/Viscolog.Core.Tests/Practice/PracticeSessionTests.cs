using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Practice;

/// <summary>The game: what can be done, what is refused, what is shown when.</summary>
public sealed class PracticeSessionTests
{
    private static readonly PracticeGame Slow = PracticeGame.Of(PracticeDifficulty.Find("slow")!, 3);

    [Fact]
    public void The_reading_builds_up_while_the_pot_stands()
    {
        var session = Do(PracticeSession.Of(Slow), Dose(4), Stir(10));
        var start = session.Pot.Now;
        Assert.Equal(Slow.Pot.Settled.Ln, start.Ln, 1e-9);
        var half = Do(session, Wait(Slow.Pot.TimeConstant.TotalSeconds * Math.Log(2)));
        // After τ·ln 2 half of the way in ln is done (first-order build-up).
        Assert.Equal((start.Ln + session.Pot.Settled.Ln) / 2, half.Pot.Now.Ln, 1e-6);
        Assert.Equal(session.Pot.Settled.Ln, Do(session, Wait(3600)).Pot.Now.Ln, 1e-9);
    }

    [Fact]
    public void What_is_read_is_what_the_instrument_showed_and_lies_within_its_error()
    {
        var session = Do(PracticeSession.Of(Slow), Dose(4), Stir(10), Wait(300));
        var shown = session.Showing!.Value;
        var read = Do(session, new PracticeMove.Read());
        Assert.Equal(shown, read.Lines[0].Shown);
        Assert.InRange(Math.Abs(shown.Ln - session.Pot.Now.Ln), 1e-6, 5 * Slow.Difficulty.Repeatability.Fraction);
        Assert.NotEqual(shown, read.Showing);
    }

    [Fact]
    public void Readings_scatter_as_the_repeatability_says()
    {
        var session = Do(PracticeSession.Of(Slow), Dose(4), Stir(10), Wait(3600));
        var lns = new List<double>();
        for (var i = 0; i < 400; i++)
        {
            session = Do(session, new PracticeMove.Read());
            lns.Add(session.Lines[^1].Shown!.Value.Ln);
        }

        var mean = lns.Average();
        var sd = Math.Sqrt(lns.Sum(v => (v - mean) * (v - mean)) / (lns.Count - 1));
        Assert.InRange(sd / Slow.Difficulty.Repeatability.Fraction, 0.88, 1.12);
        Assert.Equal(session.Pot.Settled.Ln, mean, 0.01);
    }

    [Fact]
    public void What_floats_on_the_pot_can_be_neither_read_nor_left_standing()
    {
        var session = Do(PracticeSession.Of(Slow), Dose(2));
        Assert.Null(session.Showing);
        foreach (var move in new PracticeMove[] { new PracticeMove.Read(), Wait(10), new PracticeMove.End() })
        {
            Assert.Equal(new PracticeRefusal.StirFirst(move), session.Take(move).Refusal);
        }

        Assert.Same(session, session.Take(new PracticeMove.Read()).Session);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(201)]
    public void Senseless_doses_are_refused(double grams)
        => Assert.Equal(new PracticeRefusal.DoseOutside(Mass.FromGrams(200)), PracticeSession.Of(Slow).Take(Dose(grams)).Refusal);

    [Fact]
    public void Other_senseless_moves_are_refused()
    {
        var session = PracticeSession.Of(Slow);
        Assert.Equal(new PracticeRefusal.NothingToStir(), session.Take(Stir(10)).Refusal);
        var stirring = new PracticeRefusal.StirringOutside(TimeSpan.FromSeconds(1), TimeSpan.FromMinutes(10));
        Assert.Equal(stirring, Do(session, Dose(1)).Take(Stir(0.5)).Refusal);
        Assert.Equal(stirring, Do(session, Dose(1)).Take(Stir(601)).Refusal);
        Assert.Equal(new PracticeRefusal.StandingOutside(TimeSpan.FromHours(2)), session.Take(Wait(0)).Refusal);
        Assert.Equal(new PracticeRefusal.BaseOutside(Mass.FromGrams(2000)), session.Take(new PracticeMove.LetDown(Mass.None)).Refusal);
        Assert.Equal(new PracticeRefusal.GameEnded(), Do(session, new PracticeMove.End()).Take(new PracticeMove.Read()).Refusal);
    }

    [Fact]
    public void The_truth_is_not_shown_before_the_end()
    {
        var session = Do(PracticeSession.Of(Slow), new PracticeMove.Read());
        Assert.Throws<ArgumentException>(() => PracticePath.Of(PracticePlayer.Person, session));
        Assert.Throws<ArgumentException>(() => PracticeScore.Of(session));
    }

    [Fact]
    public void Too_much_at_once_or_hardly_stirred_leaves_lumps_and_too_much_weeps()
    {
        var session = PracticeSession.Of(Slow);
        Assert.Empty(Do(session, Dose(2), Stir(10)).Signs);
        Assert.Equal([PracticeSign.Lumps], Do(session, Dose(2), Stir(3)).Signs);
        Assert.Equal([PracticeSign.Lumps], Do(session, Dose(4), Stir(10)).Signs);
        var weeping = session;
        for (var i = 0; i < 6; i++)
        {
            weeping = Do(weeping, Dose(2), Stir(10));
        }

        Assert.Equal([PracticeSign.Weeping], weeping.Signs);
        Assert.Empty(Do(weeping, new PracticeMove.LetDown(Mass.FromGrams(200)), Stir(10)).Signs);
    }

    [Fact]
    public void Scores_count_doses_readings_waits_and_haste()
    {
        var session = Do(
            PracticeSession.Of(Slow), new PracticeMove.Read(), Dose(2), Stir(10), Wait(5), new PracticeMove.Read(), Wait(30),
            new PracticeMove.Read(), Dose(2), Stir(10), Wait(600), new PracticeMove.Read(), new PracticeMove.Read(),
            Dose(2), Stir(10), new PracticeMove.End());
        var path = PracticePath.Of(PracticePlayer.Person, session);
        Assert.Equal((3, 5, 1, 1), (path.Score.Doses, path.Score.Readings, path.Score.Waits, path.Score.EarlyDoses));
        Assert.Equal(TimeSpan.FromSeconds(30 + 5 + 30 + 600), path.Score.Time);
        Assert.Equal((6, PracticeVerdict.StillShort), (path.Steps.Length, path.Score.Verdict));
        Assert.Null(path.Steps[^1].Line.Shown);
    }

    [Fact]
    public void A_seed_out_of_range_is_a_programmers_mistake()
        => Assert.Throws<ArgumentOutOfRangeException>(() => PracticeGame.Of(PracticeDifficulty.All[0], -1));

    private static PracticeMove.Dose Dose(double grams) => new(Mass.FromGrams(grams));

    private static PracticeMove.Stir Stir(double seconds) => new(TimeSpan.FromSeconds(seconds));

    private static PracticeMove.Wait Wait(double seconds) => new(TimeSpan.FromSeconds(seconds));

    private static PracticeSession Do(PracticeSession session, params PracticeMove[] moves)
    {
        var turn = session.Take(moves);
        Assert.Null(turn.Refusal);
        return turn.Session;
    }
}
