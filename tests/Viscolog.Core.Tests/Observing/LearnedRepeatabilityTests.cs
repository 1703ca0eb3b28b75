using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Observing;

/// <summary>Repeatability learned from repeats.</summary>
public sealed class LearnedRepeatabilityTests
{
    /// <summary>
    /// NIST/SEMATECH e-Handbook of Statistical Methods, section 2.4.4.3 (seen): level-3 standard deviations of probe 2362, one degree of
    /// freedom each, pooled 0.0197 on 5.
    /// </summary>
    [Fact]
    public void Pooled_deviation_of_the_NIST_gauge_study()
    {
        var (deviation, freedom) = LearnedRepeatability.Pooled(
            new[] { 0.0223, 0.0027, 0.0289, 0.0133, 0.0205 }.Select(s => new[] { 1 + (s / Math.Sqrt(2)), 1 - (s / Math.Sqrt(2)) }));
        Assert.Equal(0.0197, deviation, 5e-5);
        Assert.Equal(5, freedom);
    }

    [Fact]
    public void Eight_repeats_replace_the_default_and_seven_do_not()
    {
        Assert.Equal(2.12, LearnedRepeatability.Into(Repeats(9), []).RepeatabilityInForce.Percent, 0.15);
        Assert.Null(LearnedRepeatability.Into(Repeats(8), []).Repeatability);
        Assert.Equal(2.12, LearnedRepeatability.Into(Repeats(1), [Repeats(5), Repeats(6)]).RepeatabilityInForce.Percent, 0.3);
    }

    /// <summary>
    /// A direct reading repeats to 4 % by default: repeats up to six times that apart in ln are scatter, beyond it one of them is a slip
    /// and none teach.
    /// </summary>
    [Theory]
    [InlineData(5.9, true)]
    [InlineData(6.1, false)]
    public void Repeats_further_apart_than_six_defaults_teach_nothing(double defaults, bool isLearned)
    {
        var run = Repeats(8);
        run = run with { Entries = run.Entries.Add(Bench.Read(980 * Math.Exp(defaults * 0.04))) };
        Assert.Equal(isLearned, LearnedRepeatability.Into(run, []).Repeatability is not null);
    }

    [Fact]
    public void Repeats_by_another_method_and_stated_values_count_otherwise()
    {
        var other = Repeats(12) with { Method = Method.Find("rotational") };
        Assert.Null(LearnedRepeatability.Into(Repeats(1), [other]).Repeatability);
        Assert.Equal(
            7, LearnedRepeatability.Into(Repeats(12) with { Repeatability = Percentage.FromPercent(7) }, []).RepeatabilityInForce.Percent);
    }

    [Fact]
    public void Readings_on_the_way_up_are_no_repeats()
    {
        Entry[] building =
        [
            Bench.Read(1000),
            Bench.Dose(1),
            .. Enumerable.Range(1, 12).Select(i => Bench.Read(2000 * (1 + (0.01 * i)), wait: 5 * i)),
        ];
        Assert.Null(LearnedRepeatability.Into(Bench.Run(9000, building), []).Repeatability);
    }

    [Fact]
    public void Equal_readings_are_not_believed_to_be_exact()
        => Assert.Equal(
            1,
            LearnedRepeatability.Into(Bench.Run(9000, [.. Enumerable.Repeat(Bench.Read(1000), 12)]), []).RepeatabilityInForce.Percent,
            1e-9);

    /// <summary>Readings of one pot by turns 2 % above and below: a standard deviation near 2.1 %.</summary>
    private static Run Repeats(int count)
        => Bench.Run(9000, [.. Enumerable.Range(0, count).Select(i => Bench.Read(1000 * (i % 2 == 0 ? 1.02 : 0.98)))]);
}
