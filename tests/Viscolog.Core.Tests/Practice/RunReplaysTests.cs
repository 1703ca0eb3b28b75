using Viscolog.Core.Advising;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Practice;

/// <summary>A run gone through reading by reading.</summary>
public sealed class RunReplaysTests
{
    [Fact]
    public void Each_moment_knows_what_was_known_then_and_no_more()
    {
        var run = Run(Read(850, 60), Dosed(4), Read(1500, 120), new Entry.Noted("looks fine"), Read(1510, 250), Dosed(6), Read(30000, 200));
        var moments = RunReplays.Of(run, null, []).ToList();
        Assert.Equal([1, 3, 4, 6], moments.Select(m => m.Known.Entries.Length));
        foreach (var moment in moments)
        {
            var asked = Studied.Of(new(moment.Known)).Advice!;
            Assert.Equal((asked.Action, asked.Why), (moment.Advice!.Action, moment.Advice.Why));
        }

        Assert.Equal([2, 1, 2, 0], moments.Select(m => m.Done.Length));
        Assert.Equal(2, moments[0].DoseAfter.Percent, 1e-9);
        Assert.Equal(6, moments[2].Poured!.Poured.Grams);
        Assert.True(moments[2].Poured!.ChanceOver > moments[2].Advice!.Body.ChanceOver);
        Assert.Equal([ReplayMatch.More, ReplayMatch.More, ReplayMatch.Ended], [moments[0].Match, moments[2].Match, moments[^1].Match]);
    }

    [Fact]
    public void Following_advice_is_seen_as_such()
    {
        var run = Run(Read(850, 60));
        var add = Assert.IsType<BenchAction.Add>(Studied.Of(new(run)).Advice!.Action);
        Assert.Equal(ReplayMatch.AsAdvised, Match(add.Poured.Grams));
        Assert.Equal(ReplayMatch.Less, Match(add.Poured.Grams / 2));
        Assert.Equal(ReplayMatch.More, Match(add.Poured.Grams * 2));

        ReplayMatch? Match(double grams)
            => RunReplays.Of(run with { Entries = [.. run.Entries, Dosed(grams), Read(1000, 60)] }, null, []).First().Match;
    }

    [Fact]
    public void Void_entries_are_left_out_and_a_run_without_a_target_says_why_there_is_no_advice()
    {
        var run = Run(Read(850, 60), Read(8500, 70) with { VoidReason = "typed wrong" }, Dosed(2), Read(1500, 120)) with { Target = null };
        var moments = RunReplays.Of(run, null, []).ToList();
        Assert.Equal(2, moments.Count);
        Assert.All(moments, m => Assert.IsType<NoAdvice.NoTarget>(Assert.IsType<StudyOutcome.Made>(m.Outcome).Study.NoAdvice));
        Assert.All(moments, m => Assert.Null(m.Match));
        var band = ViscosityBand.Around(Viscosity.FromMilliPascalSeconds(9000), Percentage.FromPercent(15));
        Assert.NotNull(RunReplays.Of(run, band, []).First().Advice);
    }

    [Fact]
    public void Grams_far_beyond_the_range_hide_no_advice()
    {
        var first = RunReplays.Of(Run(Read(850, 60), Dosed(90), Read(90000, 120)), null, []).First();
        Assert.NotNull(first.Advice);
        Assert.Null(first.Poured);
        Assert.Equal(ReplayMatch.More, first.Match);
    }

    [Fact]
    public void A_long_run_is_told_whole_and_judged_at_a_sample()
    {
        var run = Run([.. Enumerable.Range(0, 200).SelectMany(i => (Entry[])[Read(850 + (4 * i), 300), Dosed(0.04)])]);
        var moments = RunReplays.Of(run, null, []).ToList();
        Assert.Equal(200, moments.Count);
        Assert.Equal(ReplaySample.Of(run).Order(), moments.Where(m => m.Outcome is not null).Select(m => m.Number));
        Assert.True(moments.Count(m => m.Outcome is not null) <= ReplaySample.AllUpTo / 2);
        Assert.All(moments, m => Assert.Equal(2 * 0.01 * m.Number, m.DoseAfter.Percent, 1e-9));
        Assert.All(moments, m => Assert.Equal((m.Advice is null, 850 + (4 * (m.Number - 1))), (m.Match is null, (int)Body(m))));

        static double Body(ReplayMoment moment) => ((InstrumentValue.Direct)moment.Reading.Value!).Viscosity.MilliPascalSeconds;
    }

    private static Run Run(params Entry[] entries) => new(new("Ledge"), Mass.FromGrams(200))
    {
        Thickeners = [new Thickener("Sail")],
        Target = new Target.Value(Viscosity.FromMilliPascalSeconds(9000), null),
        Entries = [.. entries],
    };

    private static Entry.Dosed Dosed(double grams) => new("Sail", Mass.FromGrams(grams));

    private static Entry.Measured Read(double mpas, double wait)
        => new(
            new Reading { Value = new InstrumentValue.Direct(Viscosity.FromMilliPascalSeconds(mpas)), Wait = TimeSpan.FromSeconds(wait) });
}
