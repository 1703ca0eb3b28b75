using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Advising;

public sealed class SurpriseTests
{
    private static readonly Run Read = Bench.AlongSigmoid(18_000, 0.5, 0.5, 0.5, 0.5);

    [Theory]
    [InlineData(1)]
    [InlineData(1.15)]
    [InlineData(0.87)]
    public void A_reading_that_scatters_is_none(double ratio) => Assert.Null(Of(Read, ratio * Bench.Sigmoid(2)));

    [Theory]
    [InlineData(10, Blunder.DigitTooMany)]
    [InlineData(0.1, Blunder.DigitTooFew)]
    [InlineData(1000, Blunder.OtherUnit)]
    [InlineData(0.001, Blunder.OtherUnit)]
    [InlineData(3, Blunder.None)]
    [InlineData(1e7, Blunder.None)]
    public void A_blunder_is_one_and_is_named(double ratio, Blunder blunder)
    {
        var surprise = Of(Read, ratio * Bench.Sigmoid(2));
        Assert.Equal(ratio, surprise!.Ratio, 0.1 * ratio);
        Assert.Equal(blunder, surprise.Blunder);
    }

    /// <summary>
    /// A rise that goes on as it did is nothing to ask about; a thousand times is, and so is a tenth after thickener went in.
    /// </summary>
    [Fact]
    public void At_a_new_dose_the_curve_may_still_rise()
    {
        var dosed = Read with { Entries = Read.Entries.Add(Bench.Dose(0.4)) };
        Assert.Null(Of(dosed, 1.2 * Bench.Sigmoid(2.4)));
        Assert.NotNull(Of(dosed, 1000 * Bench.Sigmoid(2)));
        Assert.NotNull(Of(dosed, Bench.Sigmoid(2) / 10));
    }

    [Fact]
    public void Before_anything_was_read_nothing_is_one() => Assert.Null(Of(Bench.Run(9000), 1e9));

    private static Surprise? Of(Run run, double body)
    {
        var study = Assert.IsType<StudyOutcome.Made>(Study.Of(new(run))).Study;
        return Surprise.Of(study, ((Entry.Measured)Bench.Read(body, 240)).Reading);
    }
}
