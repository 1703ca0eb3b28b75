using Viscolog.Core.Batches;
using Viscolog.Core.Limits;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;
using Viscolog.Tests.Support;
using Viscolog.Wording;

namespace Viscolog.Tests.Wording;

/// <summary>Every refusal, source and note of a batch has its sentence.</summary>
public sealed class BatchWordsTests
{
    private static readonly DoseLimit Limit = new(Dose.FromPercent(5), new LimitReason.UsualRange());

    private static readonly DoseEstimate Named
        = new(Dose.FromPercent(1.5), Dose.FromPercent(1.25), Dose.FromPercent(1.75), Percentage.FromPercent(90));

    /// <summary>Each case and a piece of what it says.</summary>
    public static TheoryData<object, string> Cases => new()
    {
        { new BatchRefusal.NothingDosed(), "log the doses first" },
        { new BatchRefusal.NoDensity(), "--density G_ML" },
        { new BatchRefusal.LowPh(6.84), "at pH 6.8, where" },
        { new BatchRefusal.NoneInPot("T"), "contains no 'T'" },
        { new BatchRefusal.NoDoseForTarget(false, "T", Limit), "ended short of the band, and its curve gives no dose of 'T' for the target "
            + "within the dose limit of 5 % (the usual range ends at 5 %)" },
        { new BatchRefusal.NoDoseForTarget(true, "T", Limit), "ended over, and" },
        { new BatchRefusal.ScaleTooCoarse(0.25, Mass.FromGrams(1), Mass.FromGrams(0.01)), "is 0.25 g, which a scale of 1 g can't weigh: "
            + "use one of 0.01 g" },
        { new BatchSource.EndOfRun(Dose.FromPercent(2.4), "T", true), "The run ended at 2.40 % T, and the batch goes there too." },
        { new BatchSource.EndOfRun(Dose.FromPercent(2.4), "T", false), "there too. The run has no target" },
        { new BatchSource.CurveOfRun(true, Dose.FromPercent(2.4), "T", Named), "ended over, at 2.40 % T. The batch goes to 1.50 %, "
            + "where its curve meets the target (1.25 % to 1.75 %, 9 times in 10)" },
        { new BatchSource.CurveOfRun(false, Dose.FromPercent(1), "T", Named with { High = null }), "(1.25 % to more than was read," },
        { new BatchSource.RunOfTwo(), "(two thickeners work together in it)" },
        { new BatchSource.RunWithoutReadings(), "(no reading of it counts)" },
        { new BatchSource.RunWithoutCurve(new EvidenceTrouble.NoThickener()), "(the run names no thickener" },
        { new BatchNote.FewScaleSteps(Mass.FromGrams(1), 2, Mass.FromGrams(0.1)), "the scale (1 g): dilute the thickener with water (at "
            + "least 1:2)" },
        { new BatchNote.BaseChanged(Mass.FromGrams(12), Mass.None), "in the run 12 g of samples were taken: what" },
        { new BatchNote.BaseChanged(Mass.FromGrams(12), Mass.FromGrams(3)), "were taken and 3 g of base was added to let it down: what" },
        { new BatchNote.WaterOnItsOwn(Percentage.FromPercent(1.5)), "(1.50 g for 100 g of base now)" },
        { new BatchNote.DensityTaken("T"), "for 'T': 1.0 g/mL is assumed" },
        { new BatchNote.OrderOfRun(), "in the order of the run" },
        { new BatchNote.ReadingsDecide(), "not the last gram of the plan" },
        { new BatchNote.OfEvidence(new EvidenceWarning.WithoutWait(2)), "2 readings without wait_s" },
    };

    [Theory]
    [MemberData(nameof(Cases), DisableDiscoveryEnumeration = true)]
    public void A_case_says_so(object of, string piece) => Assert.Contains(piece, of switch
    {
        BatchRefusal refusal => BatchWords.Of(refusal),
        BatchSource source => BatchWords.Of(source),
        BatchNote note => BatchWords.Of(note),
        _ => "",
    }, StringComparison.Ordinal);

    [Fact]
    public void Every_case_is_tried_above()
        => ClosedSets.AllTried([typeof(BatchRefusal), typeof(BatchSource), typeof(BatchNote)], Cases.Select(c => c.Data.Item1));
}
