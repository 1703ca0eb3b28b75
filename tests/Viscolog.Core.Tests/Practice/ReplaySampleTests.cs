using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Practice;

/// <summary>Which readings a replay judges.</summary>
public sealed class ReplaySampleTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(8)]
    [InlineData(ReplaySample.AllUpTo)]
    public void Each_reading_of_a_short_run_is_judged(int readings)
        => Assert.Equal(Enumerable.Range(1, readings), ReplaySample.Of(Run(readings, 3)).Order());

    [Fact]
    public void No_reading_no_judgement() => Assert.Empty(ReplaySample.Of(Run(0, 1)));

    /// <summary>A posterior takes time by the readings that it rests on and something of its own, about 128 readings' worth.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(100_000)]
    public void Readings_gone_through_grow_by_the_readings_of_the_run(int every)
    {
        foreach (var readings in (int[])[20, 32, 33, 50, 100, 200, 500, 1000, 5000, 20_000])
        {
            var judged = ReplaySample.Of(Run(readings, every));
            Assert.InRange(judged.Count, Math.Min(readings, ReplaySample.Least), ReplaySample.AllUpTo);
            Assert.InRange(judged.Sum(), 1, ReplaySample.AllUpTo * 128 + (ReplaySample.Least * Math.Min(readings, ReplaySample.Furthest)));
            Assert.Contains(Math.Min(readings, ReplaySample.Furthest), judged);
        }
    }

    [Fact]
    public void Readings_before_an_addition_come_first()
    {
        var judged = ReplaySample.Of(Run(500, 100));
        Assert.Superset(new HashSet<int> { 100, 200, 300, 400, 500 }, judged.ToHashSet());
        Assert.Equal(ReplaySample.Least, judged.Count);
        Assert.All(ReplaySample.Of(Run(500, 10)), n => Assert.Equal(0, n % 10));
    }

    [Fact]
    public void What_is_void_counts_for_nothing()
    {
        var run = Run(40, 4);
        var half = run with
        {
            Entries =
            [
                .. run.Entries.Select(
                    e => e is Entry.Measured m && m.Reading.Wait!.Value.TotalSeconds > 20 ? e with { VoidReason = "twice" } : e),
            ],
        };
        Assert.Equal(Enumerable.Range(1, 20), ReplaySample.Of(half).Order());
    }

    /// <summary>Readings, the n-th after n seconds, with an addition behind each so-manieth.</summary>
    private static Run Run(int readings, int every) => new(new("Ledge"), Mass.FromGrams(200))
    {
        Thickeners = [new Thickener("Sail")],
        Entries =
        [
            .. Enumerable.Range(1, readings)
                .SelectMany(n => n % every == 0 ? (Entry[])[Read(n), new Entry.Dosed("Sail", Mass.FromGrams(0.01))] : [Read(n)]),
        ],
    };

    private static Entry.Measured Read(int seconds) => new(new Reading
    {
        Value = new InstrumentValue.Direct(Viscosity.FromMilliPascalSeconds(900)),
        Wait = TimeSpan.FromSeconds(seconds),
    });
}
