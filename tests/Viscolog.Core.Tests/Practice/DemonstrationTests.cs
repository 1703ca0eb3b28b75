using Viscolog.Core.Advising;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Practice;

/// <summary>The three players, and what is taught of their games.</summary>
public sealed class DemonstrationTests
{
    [Theory]
    [InlineData("slow", 3)]
    [InlineData("peaked", 2)]
    public void Haste_and_large_steps_go_over_where_advice_lands_in_band(string pot, int seed)
    {
        var played = Demonstration.Of(PracticeGame.Of(PracticeDifficulty.Find(pot)!, seed));
        Assert.Equal([PracticePlayer.Impatient, PracticePlayer.Bold, PracticePlayer.Advised], played.Paths.Select(p => p.Player));
        Assert.Equal([PracticeVerdict.Over, PracticeVerdict.Over, PracticeVerdict.InBand], played.Paths.Select(p => p.Score.Verdict));
        Assert.True(played.Paths[0].Score.EarlyDoses > 0);
        Assert.Equal(0, played.Paths[1].Score.EarlyDoses);
        Assert.False(played.Paths[2].Score.WentOver);
        Assert.Equal(played.Paths[0], played.Worst);
        Assert.All(played.Paths, p => Assert.Equal(
            p.Score.WentOverAt is null ? 0 : 1,
            p.Steps.Count(s => s.IsOver && !(p.Steps.TakeWhile(t => t != s).LastOrDefault()?.IsOver ?? false))));
    }

    [Fact]
    public void Advice_keeps_to_the_band_on_pots_of_every_kind()
    {
        var scores = PracticeDifficulty.All
            .SelectMany(d => new[] { 11, 12 }.Select(seed => PracticePlayers.Advised(PracticeGame.Of(d, seed)).Score)).ToList();
        Assert.InRange(scores.Count(s => s.Verdict == PracticeVerdict.InBand), scores.Count - 1, scores.Count);
        Assert.All(scores, s => Assert.InRange(s.Doses, 1, 15));
    }

    [Fact]
    public void Each_advised_step_has_the_advice_that_it_followed()
    {
        var path = PracticePlayers.Advised(PracticeGame.Of(PracticeDifficulty.Find("easy")!, 7));
        Assert.Null(path.Steps[0].Advice);
        Assert.All(path.Steps.Skip(1), s => Assert.NotNull(s.Advice));
        PracticeStep[] dosed = [.. path.Steps.Where(s => s.Line.Poured.Grams > 0)];
        Assert.InRange(dosed.Length, 3, 5);
        Assert.All(dosed, s => Assert.Equal(s.Line.Poured, Assert.IsType<BenchAction.Add>(s.Advice!.Action).Poured));
    }

    [Fact]
    public void Twice_the_dose_takes_as_much_base_again()
    {
        var path = PracticePlayers.Bold(PracticeGame.Of(PracticeDifficulty.Find("peaked")!, 2));
        var lesson = OverdoseLesson.Of(path);
        var twice = lesson.Costs[^1];
        // By the mass balance: dose = 100·thickener/base, so half the dose needs twice the base.
        Assert.Equal(2 * path.Truth.Needed.Percent, twice.Dose.Percent, 1e-9);
        Assert.Equal(path.Truth.Base.Grams, twice.Base.Grams, 1e-9);
        Assert.InRange(twice.Growth, 1.9, 2);
        Assert.Equal(path.Score.BaseToSave.Grams, lesson.Own!.Base.Grams, 1e-6);
    }

    [Fact]
    public void Grams_near_a_peak_buy_nothing_and_beyond_it_take_body_away()
    {
        var truth = PracticePlayers.Bold(PracticeGame.Of(PracticeDifficulty.Find("peaked")!, 2)).Truth;
        var peak = truth.Peak!.Value;
        Assert.True(truth.PercentForGramAt(truth.Steepest()) > 20);
        Assert.InRange(truth.PercentForGramAt(peak), -1, 1);
        Assert.True(truth.PercentForGramAt(Dose.FromPercent(1.3 * peak.Percent)) < 0);
        Assert.True(truth.IsOver(Dose.FromPercent(1.5 * peak.Percent)));
        Assert.True(truth.FlatFrom < peak);
    }

    [Fact]
    public void A_saturating_pot_says_from_where_it_is_flat()
    {
        var ended = PracticeSession.Of(PracticeGame.Of(PracticeDifficulty.Find("flat")!, 4)).Take(new PracticeMove.End()).Session;
        var truth = PracticePath.Of(PracticePlayer.Person, ended).Truth;
        // 1 − exp(−z/s) falls to a quarter of its first slope at z = s·ln 4; the first whole gram buys somewhat less than that slope
        // promises.
        var gram = truth.PercentForGramAt(truth.FlatFrom!.Value);
        Assert.Equal("saturating", truth.Family);
        Assert.InRange(Math.Log(1 + (gram / 100)) / Math.Log(1 + (truth.PercentForGramAt(Dose.None) / 100)), 0.245, 0.3);
        Assert.Null(truth.Peak);
    }
}
