using Viscolog.Core.Batches;
using Viscolog.Core.Quantities;

namespace Viscolog.Wording;

/// <summary>The plan of a batch in sentences.</summary>
internal static class BatchWords
{
    /// <summary>Why there is no plan, and what to do.</summary>
    public static string Of(BatchRefusal refusal) => refusal switch
    {
        BatchRefusal.NothingDosed => Say("no thickener was added in the run, so there is no dose to carry over: log the doses first"),
        BatchRefusal.NoDensity => Say("litres need the base's density, which the run does not give: state the size in kg, or --density "
            + "G_ML (weigh 100 mL of the base)"),
        BatchRefusal.LowPh low => Say($"the run was read at pH {low.Ph:0.0}, where an alkali-swellable thickener hardly swells: raise the "
            + $"pH of the run first, its doses mean nothing for a batch"),
        BatchRefusal.NoneInPot none => Say($"the run's pot contains no '{none.Thickener}', so there is no dose to carry over"),
        BatchRefusal.NoDoseForTarget no => Say($"{Ended(no.IsOver)}, and its curve gives no dose of '{no.Thickener}' for the target within "
            + $"the dose limit of {no.Limit.Dose.Percent:0.##} % ({LimitWords.Of(no.Limit)}): bring the run to its target first, "
            + $"or give another with --target"),
        BatchRefusal.ScaleTooCoarse coarse => Say($"the smallest addition is {coarse.SmallestGrams:0.####} g, which a scale of "
            + $"{coarse.Step.Grams:0.####} g can't weigh: use one of {coarse.Needed.Grams:0.####} g, or dilute the thickener with water "
            + $"and enter the dilution in the run"),
        _ => throw new ArgumentOutOfRangeException(nameof(refusal), refusal, "not a case of the closed set"),
    };

    /// <summary>Where the final doses come from.</summary>
    public static string Of(BatchSource source) => source switch
    {
        BatchSource.EndOfRun end => Say($"The run ended at {end.Reached.Percent:0.00} % {end.Thickener}, and the batch goes there too.")
            + (end.HasTarget ? "" : Say(" The run has no target, so the aim is what it reads at that dose, ± 15 %.")),
        BatchSource.CurveOfRun curve => Ended(curve) + " " + Say($"The batch goes to {curve.Named.Median.Percent:0.00} %, where its curve "
            + $"meets the target ({curve.Named.Low.Percent:0.00} % to {High(curve.Named)}, 9 times in 10): bring the run to its target "
            + $"first if you can."),
        BatchSource.RunOfTwo => Repeated(Say("two thickeners work together in it")),
        BatchSource.RunWithoutReadings => Repeated(Say("no reading of it counts")),
        BatchSource.RunWithoutCurve without => Repeated(EvidenceWords.Of(without.Why)),
        _ => throw new ArgumentOutOfRangeException(nameof(source), source, "not a case of the closed set"),
    };

    /// <summary>What the maker must know.</summary>
    public static string Of(BatchNote note) => note switch
    {
        BatchNote.FewScaleSteps few => Say($"the smallest addition is under three steps of the scale ({few.Step.Grams:0.####} g): dilute "
            + $"the thickener with water (at least 1:{few.Water:0}), enter the dilution, and weigh that instead, or use a scale of "
            + $"{few.Needed.Grams:0.####} g"),
        BatchNote.BaseChanged changed => Changes(changed),
        BatchNote.WaterOnItsOwn water => Say($"water was poured into the run on its own ({water.OnBase.Percent:0.00} g for 100 g of base "
            + $"now): here it is weighed in with the base"),
        BatchNote.DensityTaken taken => Say($"no density is given for '{taken.Thickener}': 1.0 g/mL is assumed for the batch's volume"),
        BatchNote.OrderOfRun => Say("an equal part of each thickener goes in at a time, in the order of the run; keep to that order, as it "
            + "can matter"),
        BatchNote.ReadingsDecide => Say("a larger vessel mixes more slowly than a cup, other lots thicken differently, and colour or "
            + "filler shifts the curve: the readings decide, not the last gram of the plan"),
        BatchNote.OfEvidence evidence => EvidenceWords.Of(evidence.Warning),
        _ => throw new ArgumentOutOfRangeException(nameof(note), note, "not a case of the closed set"),
    };

    private static string Ended(bool isOver) => isOver ? Say("the run ended over") : Say("the run ended short of the band");

    private static string Ended(BatchSource.CurveOfRun curve) => curve.IsOver
        ? Say($"The run itself ended over, at {curve.Reached.Percent:0.00} % {curve.Thickener}.")
        : Say($"The run itself ended short of the band, at {curve.Reached.Percent:0.00} % {curve.Thickener}.");

    private static string High(DoseEstimate named)
        => named.High is { } end ? string.Create(Numbers, $"{end.Percent:0.00} %") : Say("more than was read");

    private static string Repeated(string why) => Say($"The batch repeats the doses of the run. Its curve can't show how far to go at once "
        + $"({why}), so after the first doses the rest follows in three equal parts. Whether the run ended in band is not judged here; "
        + $"'viscolog advise' does that.");

    private static string Changes(BatchNote.BaseChanged changed)
    {
        var (taken, added) = (changed.Taken.Grams, changed.Added.Grams);
        return taken > 0 && added > 0
            ? Say($"in the run {taken:0.##} g of samples were taken and {added:0.##} g of base was added to let it down: what carries over "
                + $"is the dose, not the grams that were poured")
            : taken > 0
            ? Say($"in the run {taken:0.##} g of samples were taken: what carries over is the dose, not the grams that were poured")
            : Say($"in the run {added:0.##} g of base was added to let it down: what carries over is the dose, not the grams that were "
                + $"poured");
    }
}
