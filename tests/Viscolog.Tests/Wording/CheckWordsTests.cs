using Viscolog.Core.Charting;
using Viscolog.Core.Checking;
using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;
using Viscolog.Tests.Support;
using Viscolog.Wording;

namespace Viscolog.Tests.Wording;

/// <summary>What a check or a chart finds has its sentence, case by case.</summary>
public sealed class CheckWordsTests
{
    private static readonly DateOnly Day = new(2026, 3, 2);
    private static readonly Percentage Two = Percentage.FromPercent(2);
    private static readonly CoefficientInUse Usual = new(TemperatureCoefficient.Default, CoefficientOrigin.Default);
    private static readonly MethodDrift High = new(new(Method.Direct, null), 0.05, Percentage.FromPercent(1), 3, Day, null);

    /// <summary>Each case and a piece of what it says.</summary>
    public static TheoryData<object, string> Cases => new()
    {
        { new CheckRefusal.AsksForNothing("P"), "'P' has no limits" },
        { new CheckRefusal.OtherMethod("P", Method.Find("krebs")!, Method.Direct), "by krebs, the run was read by direct" },
        { new CheckRefusal.MixedConditions([new(Method.Direct, 10), new(Method.Direct, 20)]), "different shear conditions" },
        { new CheckRefusal.NoBody(new EvidenceTrouble.NoThickener()), "names no thickener" },
        { new CheckWarning.OfReadings(new EvidenceWarning.WithoutWait(2)), "2 readings without wait_s" },
        { new CheckWarning.Outliers(1, 4), "1 of 4 readings is far from the others and counts for" },
        { new CheckWarning.Outliers(2, 5), "2 of 5 readings are far from the others and count for" },
        { new CheckWarning.ReadEarly(1), "1 reading was taken before the pot had settled and does not count" },
        { new CheckWarning.ReadEarly(2), "2 readings were taken before the pot had settled and do not count" },
        { new CheckWarning.TooFarFromReference(2), "2 readings taken more than 10 °C from the reference" },
        { new CheckWarning.NoTemperature(1, Temperature.FromCelsius(23)), "1 reading without temperature: taken within 2 °C of 23 °C" },
        { new CheckWarning.NeverChecked(Method.Direct), "direct has never been checked" },
        { new CheckWarning.CheckOverdue(High, Day.AddDays(40)), "check it again" },
        { new CheckWarning.FarOil(Viscosity.FromMilliPascalSeconds(96.5)), "an oil of 96.5 mPa·s" },
        { new CheckWarning.OtherBase("A", "B"), "for base 'A', the run has 'B'" },
        { new CheckWarning.OtherThickener("T"), "for thickener 'T'" },
        { new Doubt.ReadingsFall(), "fall over time" },
        { new Doubt.NothingSettled(), "has settled yet" },
        { new Doubt.TooFewReadings(2, 1), "needs 2 readings of the settled pot; there is 1" },
        { new Doubt.TooFewReadings(2, 0), "; there are none" },
        { new Doubt.PhNotRead(), "asks for a pH" },
        { new Doubt.StringNotRead(), "asks for a string length" },
        { new Doubt.BodyNearLimit(), "the value is too close to a limit" },
        { new Doubt.BodyTooUnsure(), "still too uncertain" },
        { new Doubt.PhNearLimit(), "the pH is too close to a limit" },
        { new Doubt.StringNearLimit(), "the string length is too close to a limit" },
        { Scatter(3, ScatterOrigin.Default, 4),
            "4.0 % a reading with 4 degrees of freedom, from these 3 readings and the method's default" },
        { Scatter(1, ScatterOrigin.Default, 2), "2.5 times the method's default, since one reading shows no scatter" },
        { Scatter(3, ScatterOrigin.Stated, 52), "with 52 degrees of freedom, from the repeatability given and these 3 readings" },
        { Scatter(1, ScatterOrigin.Stated, 50), "with 50 degrees of freedom, as given" },
        { Scatter(2, ScatterOrigin.Repeats, 15), "from 12 earlier repeats, these 2 readings and the method's default" },
        { Scatter(1, ScatterOrigin.Repeats, 14), "from 12 earlier repeats and the method's default" },
        { Scatter(2, ScatterOrigin.Own, 1), "with 1 degree of freedom, that of these 2 readings alone" },
        { Scatter(2, ScatterOrigin.Repeats, 1000), "with many degrees of freedom" },
        { new UncertaintyPart.ReadingOff(Two), "separately for each reading" },
        { new UncertaintyPart.Calibration(Two, null, true, false), "the formula's own; never checked" },
        { new UncertaintyPart.Calibration(Two, null, false, false), "taken as exact; never checked" },
        { new UncertaintyPart.Calibration(Two, High, false, false), "5.1 % too high, corrected for; its uncertainty is included" },
        { new UncertaintyPart.Calibration(Two, High with { LnBias = 0.01 }, false, true), "a bias of 1.0 %, not significant, included as "
            + "uncertainty; the check is overdue" },
        { new UncertaintyPart.OfTemperature(Two, true, Usual), "thermometer 0.2 °C, correction by a default coefficient" },
        { new UncertaintyPart.OfTemperature(Two, false, Usual), "no temperature was read" },
        { new UncertaintyPart.UnreadDegrees(Two), "within 2 °C" },
        { new UncertaintyPart.BuildUp(Two), "what may still build up" },
        { new ValueGap.NotChecked(new CheckRefusal.NoBody(new EvidenceTrouble.NoThickener())), "names no thickener" },
        { new ValueGap.NothingSettled(), "no reading of its last step has settled" },
        { new ValueGap.NotRead(), "was not read" },
        { new ValueGap.TooFewReadings(1, 2), "1 of the 2 readings" },
        { new ChartRefusal.TooFewBatches(1), "limits need 3 batches or more (20 give good ones), and there is 1" },
        { new ChartRefusal.NoScatter(), "there is no scatter" },
        { new ChartRefusal.NoLogarithm(new("7", 0)), "batch 7 has the value 0, which" },
        { new ChartRefusal.WantedNoLogarithm(), "a limit of 0" },
        { new ChartRefusal.WantedTurned(), "must be below the high one" },
        { new ChartRefusal.NoSuchBatch("x"), "no batch 'x'" },
        { new ChartWarning.FewBatches(8), "come from 8 batches; they are rough below 20" },
        { new ChartWarning.BaselineBeyondLimits(["4"]),
            "batch 4 of the baseline is beyond the limits: if the cause is known, leave it out" },
        { new ChartWarning.BaselineBeyondLimits(["4", "9"]), "batches 4, 9 of the baseline are beyond" },
        { new ChartWarning.BaselineSignals(), "capability means little" },
        { new ChartWarning.BatchTwice("4"), "batch '4' is listed more than once" },
    };

    [Theory]
    [MemberData(nameof(Cases), DisableDiscoveryEnumeration = true)]
    public void A_case_says_so(object of, string piece) => Assert.Contains(piece, of switch
    {
        CheckRefusal refusal => CheckRemarks.Of(refusal),
        CheckWarning warning => CheckRemarks.Of(warning),
        ValueGap gap => CheckRemarks.Of(gap),
        Doubt doubt => CheckWords.Of(doubt),
        UncertaintyPart part => UncertaintyWords.Of(part),
        ChartRefusal refusal => TrendWords.Of(refusal),
        ChartWarning warning => TrendWords.Of(warning),
        _ => "",
    }, StringComparison.Ordinal);

    [Fact]
    public void Every_case_is_tried_above() => ClosedSets.AllTried(
        [
            typeof(CheckRefusal), typeof(CheckWarning), typeof(ValueGap), typeof(Doubt), typeof(UncertaintyPart), typeof(ChartRefusal),
            typeof(ChartWarning),
        ],
        Cases.Select(c => c.Data.Item1));

    [Fact]
    public void Defects_and_rules_have_words_of_their_own()
    {
        Assert.Equal(
            Enum.GetValues<Defect>().Length,
            Enum.GetValues<Defect>().Select(d => CheckWords.Of(new Verdict.Reject([d]))).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal("the body is short, the pH is too low", CheckWords.Of(new Verdict.Reject([Defect.BodyShort, Defect.PhLow])));
        Assert.Equal(4, Enum.GetValues<ChartRule>().Select(TrendWords.Of).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Every_part_of_the_uncertainty_has_its_name_and_its_remedy()
    {
        UncertaintyPart[] parts = [.. Cases.Select(c => c.Data.Item1).OfType<UncertaintyPart>()];
        Assert.Equal(6, parts.Select(UncertaintyWords.Name).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(
            6, parts.Select(p => UncertaintyWords.Remedy(p, Temperature.FromCelsius(23))).Distinct(StringComparer.Ordinal).Count());
    }

    /// <summary>What is said after the next step; that of advice is tried in <see cref="ReasonWordsTests"/> and by the samples.</summary>
    public static TheoryData<StepReason, string> Reasons => new()
    {
        { new StepReason.Doubtful(new Doubt.BodyNearLimit()), "That decides, if the mean stays where it is." },
        { new StepReason.Doubtful(new Doubt.PhNotRead()), "The specification asks for a pH, and none has been read" },
        { new StepReason.SwellsAtPh(), "The thickener swells only at the right pH, and raising it first may be enough." },
        { new StepReason.BodyGoesWithPh(), "The body depends on the pH: read both again afterwards." },
        { new StepReason.MayStillBuild(), "The pot may still be building." },
        { new StepReason.LetItRest(), "Let it rest, stir gently," },
        { new StepReason.ReadingsDecideNothing(14, null), "14 more readings would decide, which is too many." },
        { new StepReason.ReadingsDecideNothing(null, new UncertaintyPart.OfTemperature(Two, true, Usual)),
            "No number of further readings would decide: the greatest uncertainty is temperature (2.0 %); bring the pot to 23 °C and "
                + "read it there." },
        { new StepReason.StringTooShort(), "The string is too short:" },
        { new StepReason.StringTooLong(), "The string is too long:" },
        { new StepReason.StringUnsure(), "Have someone else read the string length on a fresh sample" },
        { new StepReason.NoThickener(true), "The body is short, and the run names no thickener to correct it with: log base" },
        { new StepReason.NoThickener(false), "The body is over, and the run names no thickener to correct it with: let it down" },
        { new StepReason.CurveDisagrees(false), "The body is over, though the run's curve says otherwise" },
    };

    [Theory]
    [MemberData(nameof(Reasons), DisableDiscoveryEnumeration = true)]
    public void A_step_is_followed_by_its_reason(StepReason why, string said)
    {
        var check = new BatchCheck(new(new("B"), Mass.FromGrams(100)), new("P"), new Verdict.Accept(), new NextStep.Rework(why));
        Assert.StartsWith(said, CheckWords.Next(check), StringComparison.Ordinal);
        Assert.Equal($"Read the pot 2 times more: {char.ToLowerInvariant(said[0])}{said[1..]}"[..40],
            CheckWords.Next(check with { Next = new NextStep.Read(2, why) })[..40]);
    }

    private static UncertaintyPart.Repeatability Scatter(int readings, ScatterOrigin origin, double freedom)
        => new(Two, Percentage.FromPercent(4), readings, origin) { DegreesOfFreedom = freedom, Earlier = 12 };
}
