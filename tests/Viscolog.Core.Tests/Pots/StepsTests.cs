using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Pots;

public sealed class StepsTests
{
    [Fact]
    public void A_step_begins_with_whatever_goes_in_and_a_sample_begins_none()
    {
        var run = Bench.Run(
            5000,
            Bench.Read(900),
            Bench.Dose(1),
            Bench.Read(1500),
            new Entry.TakenOut(Mass.FromGrams(5)),
            Bench.Read(1510),
            new Entry.LetDown(Mass.FromGrams(20)),
            Bench.Dose(0.5),
            Bench.Read(1400));
        var steps = Steps.Of(run);
        Assert.Equal([1, 2, 1], steps.Select(s => s.Readings.Length));
        Assert.Equal(1, steps[1].Pot.DoseOf(Bench.Name).Percent, 12);
    }

    [Fact]
    public void A_void_entry_counts_for_nothing()
    {
        var run = Bench.Run(5000, Bench.Read(900), Bench.Dose(1) with { VoidReason = "wrong bottle, not poured" }, Bench.Read(905));
        var step = Assert.Single(Steps.Of(run));
        Assert.Equal(2, step.Readings.Length);
        Assert.Equal(Dose.None, run.PotNow().DoseOf(Bench.Name));
    }
}
