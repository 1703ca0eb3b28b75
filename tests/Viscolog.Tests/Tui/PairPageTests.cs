using Viscolog.Core.Quantities;
using Viscolog.Tests.Support;
using Viscolog.Tui.Bench;

namespace Viscolog.Tests.Tui;

/// <summary>The bench with a run of two thickeners.</summary>
public class PairPageTests
{
    private static readonly Lazy<BenchAdvice> Advice = new(() => BenchAdvisor.Of(Fresh().Asked));

    [Theory]
    [InlineData(80, 24, false)]
    [InlineData(80, 24, true)]
    [InlineData(120, 40, false)]
    public void The_bench_is_as_stored(int width, int height, bool isAscii)
    {
        var page = ExpectedPage.Check(ExpectedPage.Name("bench-pair", width, height, isAscii), Trial().Drawn(width, height, isAscii));
        PageTests.Fits(page, width, height, isAscii);
    }

    [Fact]
    public void The_advised_dose_is_of_the_thickener_that_the_advice_names()
    {
        var trial = Trial();
        trial.Do(new BenchEvent.TookAdvised());
        Assert.Equal(trial.State.Advice!.Advice!.Thickener.Name, trial.Last.Dosed!.Thickener);
    }

    [Fact]
    public void A_typed_dose_says_which_thickener_it_is_of()
    {
        var trial = Trial();
        var answer = BenchForms.Dose(trial.State);
        Assert.Contains("Clew", answer.Fields[0].Hint, StringComparison.Ordinal);
        Assert.Contains("Apse", answer.Fields[0].Hint, StringComparison.Ordinal);
        trial.Do(new BenchEvent.Poured("Clew", Mass.FromGrams(0.3)));
        Assert.Equal("Clew", trial.Last.Dosed!.Thickener);
    }

    [Fact]
    public void A_string_alone_is_a_reading()
    {
        var trial = Trial();
        trial.Do(new BenchEvent.ReadBeside(BenchReadings.None with { StringMm = 24 }));
        trial.Do(new BenchEvent.Typed("", "", ""));
        Assert.Equal(24, trial.Last.Reading!.StringLength!.Value.Millimeters);
        Assert.Null(trial.Last.Reading.Value);
    }

    private static BenchTrial Fresh() => BenchTrial.OfSample(Path.Combine("pair", "thread-gel-02"));

    private static BenchTrial Trial()
    {
        var trial = Fresh();
        trial.Answer(Advice.Value);
        return trial;
    }
}
