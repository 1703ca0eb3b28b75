using CsCheck;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Laws;

/// <summary>What holds for every practice pot, however it is played.</summary>
public sealed class PracticeLaws
{
    private static readonly Gen<PracticeGame> Games = Gen.Select(
        Gen.Int[0, PracticeDifficulty.All.Length - 1],
        Gen.Int[0, PracticeGame.GreatestSeed])
        .Select((difficulty, seed) => PracticeGame.Of(PracticeDifficulty.All[difficulty], seed));

    private static readonly Gen<PracticeMove[]> Doses = Gen.Select(Gen.Double[0.1, 6], Gen.Double[1, 60], Gen.Double[0.5, 400])
        .Select((grams, stir, wait) => new PracticeMove[]
        {
            new PracticeMove.Dose(Mass.FromGrams(grams)),
            new PracticeMove.Stir(TimeSpan.FromSeconds(stir)),
            new PracticeMove.Wait(TimeSpan.FromSeconds(wait)),
            new PracticeMove.Read(),
        })
        .Array[1, 12].Select(steps => steps.SelectMany(s => s).ToArray());

    [Fact]
    public void The_same_pot_and_the_same_moves_give_the_same_answers()
        => Gen.Select(Games, Doses).Sample((game, moves) =>
        {
            var again = PracticeGame.Of(game.Difficulty, game.Seed);
            Assert.Equal(
                (game.Start.Name, game.Start.Target, game.Pot.TimeConstant, game.Truth.Needed),
                (again.Start.Name, again.Start.Target, again.Pot.TimeConstant, again.Truth.Needed));
            var (one, other) = (Play(game, moves), Play(again, moves));
            Assert.Equal(one.Lines.Select(l => l.Shown), other.Lines.Select(l => l.Shown));
            Assert.Equal(one.Pot.Dose, other.Pot.Dose);
            // Standing in many small parts is the same standing.
            var split = Play(
                game,
                [
                    .. moves.SelectMany(
                        m => m is PracticeMove.Wait wait
                            ? [new PracticeMove.Wait(wait.Time / 2), new PracticeMove.Wait(wait.Time - (wait.Time / 2))]
                            : new[] { m }),
                ]);
            Assert.Equal(one.Moves, split.Moves);
            Assert.Equal(one.Lines.Select(l => l.Shown), split.Lines.Select(l => l.Shown));
        });

    [Fact]
    public void Over_stays_over_whatever_goes_in_but_base()
        => Gen.Select(Games, Doses).Sample((game, moves) =>
        {
            var over = false;
            var session = PracticeSession.Of(game);
            foreach (var move in moves)
            {
                session = session.Take(move).Session;
                var now = !session.NeedsStirring && game.Truth.IsOver(session.Pot.Dose);
                Assert.False(over && !session.NeedsStirring && !now, $"{game.Start.Name} came back from over at {session.Pot.Dose}");
                over |= now;
            }

            Assert.Equal(over, session.WentOverAt is not null);
            Assert.Equal(
                over,
                PracticePath.Of(PracticePlayer.Person, session.Take(new PracticeMove.End()).Session).Score.Verdict == PracticeVerdict.Over);
        });

    [Fact]
    public void Base_enough_brings_an_over_pot_back_to_the_aim()
    {
        var saves = 0;
        Gen.Select(Games, Doses).Sample((game, moves) =>
        {
            var session = Play(game, moves);
            var score = PracticePath.Of(PracticePlayer.Person, session.Take(new PracticeMove.End()).Session).Score;
            if (score.Verdict != PracticeVerdict.Over || score.BaseToSave.Grams is < 0.01 or > 2000)
            {
                return;
            }

            var saved = session.Take(
                [
                    new PracticeMove.LetDown(score.BaseToSave),
                    new PracticeMove.Stir(TimeSpan.FromSeconds(20)),
                    new PracticeMove.End(),
                ]).Session;
            var after = PracticePath.Of(PracticePlayer.Person, saved).Score;
            Assert.Equal(PracticeVerdict.InBand, after.Verdict);
            Assert.Equal(game.Band.Aim.Ln, after.Body.Ln, 0.02);
            Assert.NotNull(after.WentOverAt);
            Assert.Equal(score.PotTotal.Grams + score.BaseToSave.Grams, after.PotTotal.Grams, 1e-9 * after.PotTotal.Grams);
            Interlocked.Increment(ref saves);
        });
        Assert.True(saves > 5, FormattableString.Invariant($"only {saves} pots were over"));
    }

    [Fact]
    public void Grams_balance()
        => Gen.Select(Games, Doses, Gen.Double[1, 300]).Sample((game, moves, added) =>
        {
            var session = Play(
                game,
                [
                    .. moves,
                    new PracticeMove.LetDown(Mass.FromGrams(added)),
                    new PracticeMove.Stir(TimeSpan.FromSeconds(9)),
                    new PracticeMove.End(),
                ]);
            var pot = session.Run.PotNow();
            var score = PracticePath.Of(PracticePlayer.Person, session).Score;
            Assert.Equal(moves.OfType<PracticeMove.Dose>().Sum(d => d.Poured.Grams), score.Poured.Grams, 1e-9);
            Assert.Equal((game.Start.BaseMass.Grams + added, added), (session.Pot.Base.Grams, score.Base.Grams));
            // What truly went in differs from the scale by the dosing error alone, of 2 % at most.
            Assert.InRange(session.Pot.Thickener.Grams / pot.In("Pier").Grams, 0.9, 1.1);
            Assert.Equal(session.Pot.Base.Grams + session.Pot.Thickener.Grams, score.PotTotal.Grams, 1e-9);
        });

    [Fact]
    public void Every_target_can_be_had_within_the_usual_range()
        => Games.Sample(game =>
        {
            var truth = game.Truth;
            Assert.InRange(truth.Needed.Percent, 0.1, truth.RangeTop.Percent * 1.01);
            Assert.True(truth.InBandFrom < truth.Needed);
            Assert.True(truth.OverFrom is null || truth.OverFrom > truth.Needed);
            Assert.Equal(game.Band.Aim.Ln, truth.BodyAt(truth.Needed).Ln, 0.01);
            Assert.False(truth.IsOver(truth.Needed));
            Assert.True(truth.Peak is null || truth.Peak > truth.Needed);
        });

    private static PracticeSession Play(PracticeGame game, IEnumerable<PracticeMove> moves)
    {
        var turn = PracticeSession.Of(game).Take(moves);
        Assert.Null(turn.Refusal);
        return turn.Session;
    }
}
