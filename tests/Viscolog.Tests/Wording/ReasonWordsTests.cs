using Viscolog.Core.Advising;
using Viscolog.Core.Limits;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;
using Viscolog.Wording;

namespace Viscolog.Tests.Wording;

/// <summary>Every reason, warning and remedy has its sentence.</summary>
public sealed class ReasonWordsTests
{
    private static readonly DoseLimit Limit = new(Dose.FromPercent(5), new LimitReason.UsualRange());
    private static readonly Percentage Fifth = Percentage.FromPercent(20);
    private static readonly Mass Fine = Mass.FromGrams(0.01);

    /// <summary>Each reason, what its sentence says for one thickener, and for two.</summary>
    public static TheoryData<AdviceReason, string, string> Reasons => new()
    {
        { new AdviceReason.TooFarFromReference(Temperature.FromCelsius(23)), "too far from 23 °C", "too far from 23 °C" },
        { new AdviceReason.NothingRead(), "No body has been read yet", "read the body of the pot as it is, and draw a string" },
        { new AdviceReason.NotReadSinceChange(), "stir, let it stand, read.", "stir, let it stand, read the body and draw a string." },
        { new AdviceReason.StringNotRead(false), "(string_mm)", "No string has been read yet" },
        { new AdviceReason.StringNotRead(true), "The string has not been read since", "length in mm at which the string breaks." },
        { new AdviceReason.LowPh(6.84), "At pH 6.8 an", "hardly swells" },
        { new AdviceReason.Falls(), "fall over time", "until two agree." },
        { new AdviceReason.Contradicted(new Contradiction.Unexpected { Ratio = 1.5 }), "The last reading is 50 % above what the others "
            + "suggest: stir gently", "50 % above" },
        { new AdviceReason.Contradicted(new Contradiction.Fell { Ratio = 0.01 }), "The body reads 1/100 of what it read before, "
            + "though thickener was added", "1/100 of" },
        { new AdviceReason.Contradicted(new Contradiction.Jumped { Ratio = 22.22 }), "The body reads 22 times what it read before so "
            + "small an addition", "22 times" },
        { new AdviceReason.StillBuilds(0.034, Percentage.FromPercent(5)),
            "about 3.4 % is expected, and it counts as settled below 2.5 %", "agree within 5 %" },
        { new AdviceReason.StillBuilds(0.344, Percentage.FromPercent(5)), "about 34 % is expected", "about 34 %" },
        { new AdviceReason.InBandOnOneReading(), "on a single reading", "to be sure" },
        { new AdviceReason.ProbablyInBand(), "Probably in band", "one more reading of the same pot will." },
        { new AdviceReason.MaybeInBand(), "It may be in band already", "what can't be taken out." },
        { new AdviceReason.InBand(), "The settled body is in band", "Body and string are both in band" },
        { new AdviceReason.LikelyInBand(), "More likely in band than not, and", "More likely in band than not, body and string, and" },
        { new AdviceReason.MaybeOver(), "The pot may already be over", "will settle it" },
        { new AdviceReason.BodyDoubtful(), "leave the body too uncertain", "once more to decide" },
        { new AdviceReason.StringDoubtful(Fifth), "good only to 20 %", "to decide" },
        { new AdviceReason.StringUntold(), "leave the string too uncertain", "one more from the same pot" },
        { new AdviceReason.StringKeepsAdditionSmall(Fifth), "good only to 20 %", "keeps the next addition small" },
        { new AdviceReason.BodyMayPass(), "before adding base", "before the string reaches its own" },
        { new AdviceReason.Over(Quantity.Body), "base brings the dose back down", "base brings both doses back down. Make up what the "
            + "string then lacks" },
        { new AdviceReason.Over(Quantity.Stringiness), "Make up what the body then lacks", "The string is over its band" },
        { new AdviceReason.BodyWouldPass(Dose.FromPercent(1.25), "S"), "about 1.25 % more S", "Adding base now makes room" },
        { new AdviceReason.StringWouldPass(Dose.FromPercent(1.25), "A"), "the 1.25 % A that", "Adding base now makes room" },
        { new AdviceReason.BaseIsOver(Quantity.Body), "The pot is over, and even", "The body is over, and even" },
        { new AdviceReason.BaseIsOver(Quantity.Stringiness), "draw a longer string", "The string is over" },
        { new AdviceReason.TooMuchBase(Mass.FromGrams(412.4), new AdviceReason.Over(Quantity.Stringiness)), "The pot is over, and "
            + "letting it down would take 412 g", "in small doses. Letting it down would take 412 g" },
        { new AdviceReason.BaseTooSmall(Fine), "(step 0.01 g)", "use a finer scale" },
        { new AdviceReason.IncrementTooSmall(Fine), "(0.01 g)", "pre-dilute the thickener" },
        { new AdviceReason.LimitInTheWay(Limit), "(the usual range ends at 5 %)", "The dose limit prevents it" },
        { new AdviceReason.OutOfReach("T"), "out of reach with 'T'", "aim lower" },
        { new AdviceReason.StringOutOfReach("S", Length.FromMillimeters(12.34)),
            "'S' is expected to bring the string to only 12.3 mm", "a shorter string" },
        {
            new AdviceReason.NotBoth(Dose.FromPercent(2), Viscosity.FromMilliPascalSeconds(12345), Length.FromMillimeters(9), ("A", "S")),
            "the string needs 2.0 % 'S', which brings the body to about 12300 mPa·s",
            "reaches about 9 mm. Choose: a shorter string, more body, less 'A'"
        },
        { new AdviceReason.BodyOutOfReach("A", Viscosity.FromMilliPascalSeconds(4321)),
            "only about 4320 mPa·s", "stronger thickener than 'A'" },
        { new AdviceReason.FallsWithDose(Quantity.Body, "T", [850.4, 700, 560]), "The body falls as 'T' is added: 850, 700, 560 "
            + "mPa·s.", "the wrong material" },
        { new AdviceReason.LumpsSeen(), "stir until they are gone", "What was added still counts." },
        { new AdviceReason.BandTooNarrow(Percentage.FromPercent(1), Percentage.FromPercent(4)), "±1 %, is narrower than",
            "scatters by about 4 %" },
        { new AdviceReason.NothingSafe(), "repeat the readings", "accept a greater risk" },
        { new AdviceReason.Chosen(ChoiceBound.BodyRisk, Percentage.FromPercent(2.4), Limit)
            { FewDoses = 2 }, "Two doses are too few", "within 2.4 % (1 in 42)." },
        { new AdviceReason.Chosen(ChoiceBound.StepCap, Fifth, Limit)
            { EarlierRuns = 3, IsOnKnownGround = true, IsShapeOpen = true }, "3 earlier runs of this base",
            "nor 60 % of the usual range. Several shapes" },
        { new AdviceReason.ChosenOfTwo(ChoiceBound.Room, Quantity.Stringiness, Fifth, ("S", "A"))
            { IsStringFirst = true }, "String first: ", "room for the A still to come, which changes the string too." },
        { new AdviceReason.ChosenOfTwo(ChoiceBound.StringRisk, Quantity.Body, Fifth, ("A", "S")), "within 20 % (1 in 5); the string is "
            + "the closer", "in body or string" },
    };

    [Theory]
    [MemberData(nameof(Reasons), DisableDiscoveryEnumeration = true)]
    public void A_reason_says_so_for_one_thickener_and_for_two(AdviceReason why, string ofOne, string ofTwo)
    {
        Assert.Contains(ofOne, Said(why, 1), StringComparison.Ordinal);
        Assert.Contains(ofTwo, Said(why, 2), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_reason_is_tried_above()
        => Assert.Empty(Cases<AdviceReason>().Except(Reasons.Select(r => r.Data.Item1.GetType())));

    [Fact]
    public void Remedies_and_warnings_have_words_of_their_own()
    {
        Assert.Equal(Enum.GetValues<Remedy>().Length,
            Enum.GetValues<Remedy>().Select(ReasonWords.Of).Distinct(StringComparer.Ordinal).Count());
        AdviceWarning[] warnings =
        [
            new AdviceWarning.OfEvidence(new EvidenceWarning.WithoutWait(2)), new AdviceWarning.HardlyThickened(),
            new AdviceWarning.UnlikeHistory(true),
            new AdviceWarning.UnlikeHistory(false), new AdviceWarning.HistoryLeftAside("T"), new AdviceWarning.FewScaleSteps(),
            new AdviceWarning.PhNotRead("T"), new AdviceWarning.StockWater(Mass.FromGrams(31), Mass.FromGrams(106)),
            new AdviceWarning.RisesWithoutEnd(TimeSpan.FromHours(4), Percentage.FromPercent(28)),
        ];
        Assert.Equal(warnings.Length, warnings.Select(ReasonWords.Of).Distinct(StringComparer.Ordinal).Count());
        Assert.Empty(Cases<AdviceWarning>().Except(warnings.Select(w => w.GetType())));
    }

    [Theory]
    [InlineData(2.4, "1 in 42")]
    [InlineData(40, "1 in 2")]
    [InlineData(0.042, "1 in 2400")]
    [InlineData(72, "7 in 10")]
    [InlineData(95, "almost certain")]
    [InlineData(0.01, "less than 1 in 10000")]
    public void A_chance_is_said_in_two_digits(double percent, string said)
        => Assert.Equal(said, ReasonWords.OneIn(Percentage.FromPercent(percent)));

    private static IEnumerable<Type> Cases<T>() => typeof(T).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(T)));

    private static string Said(AdviceReason why, int quantities)
    {
        var chance = Percentage.FromPercent(50);
        AdvisedQuantity[] all =
        [
            new AdvisedQuantity.OfBody(ViscosityBand.Around(Viscosity.FromMilliPascalSeconds(1000), Fifth), null, null)
                { ChanceInBand = chance, ChanceOver = chance },
            new AdvisedQuantity.OfString(new(Length.FromMillimeters(1), Length.FromMillimeters(2)), null, null)
                { ChanceInBand = chance, ChanceOver = chance },
        ];
        return ReasonWords.Of(new Advice(new BenchAction.Stop(), why)
        { Quantities = [.. all.Take(quantities)], Thickeners = [], ChanceAllInBand = chance });
    }
}
