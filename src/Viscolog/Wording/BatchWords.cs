using System.Globalization;
using Viscolog.Core.Batches;
using Viscolog.Core.Quantities;

namespace Viscolog.Wording;

/// <summary>The plan of a batch in sentences.</summary>
internal static class BatchWords
{
    /// <summary>Why there is no plan, and what to do.</summary>
    public static string Of(BatchRefusal refusal) => refusal switch
    {
        BatchRefusal.NothingDosed => "no thickener was added in the run, so there is no dose to carry over: log the doses first",
        BatchRefusal.NoDensity => "litres need the base's density, which the run does not give: state the size in kg, or --density G_ML "
            + "(weigh 100 mL of the base)",
        BatchRefusal.LowPh low => string.Create(CultureInfo.InvariantCulture, $"the run was read at pH {low.Ph:0.0}, where an "
            + $"alkali-swellable thickener hardly swells: raise the pH of the run first, its doses mean nothing for a batch"),
        BatchRefusal.NoneInPot none => $"the run's pot contains no '{none.Thickener}', so there is no dose to carry over",
        BatchRefusal.NoDoseForTarget no => string.Create(CultureInfo.InvariantCulture, $"the run ended {Where(no.IsOver)}, and its curve "
            + $"gives no dose of '{no.Thickener}' for the target within the dose limit of {no.Limit.Dose.Percent:0.##} % "
            + $"({no.Limit.Why}): bring the run to its target first, or give another with --target"),
        BatchRefusal.ScaleTooCoarse coarse => string.Create(CultureInfo.InvariantCulture, $"the smallest addition is "
            + $"{coarse.SmallestGrams:0.####} g, which a scale of {coarse.Step.Grams:0.####} g can't weigh: use one of "
            + $"{coarse.Needed.Grams:0.####} g, or dilute the thickener with water and enter the dilution in the run"),
        _ => throw new ArgumentOutOfRangeException(nameof(refusal), refusal, "not a case of the closed set"),
    };

    /// <summary>Where the final doses come from.</summary>
    public static string Of(BatchSource source) => source switch
    {
        BatchSource.EndOfRun end => string.Create(CultureInfo.InvariantCulture, $"The run ended at {end.Reached.Percent:0.00} % "
            + $"{end.Thickener}, and the batch goes there too.")
            + (end.HasTarget ? "" : " The run has no target, so the aim is what it reads at that dose, ± 15 %."),
        BatchSource.CurveOfRun curve => string.Create(CultureInfo.InvariantCulture, $"The run itself ended {Where(curve.IsOver)}, at "
            + $"{curve.Reached.Percent:0.00} % {curve.Thickener}. The batch goes to {curve.Named.Median.Percent:0.00} %, where its curve "
            + $"meets the target ({curve.Named.Low.Percent:0.00} % to {High(curve.Named)}, 9 times in 10): bring the run to its target "
            + $"first if you can."),
        BatchSource.RunOfTwo => Repeated("two thickeners work together in it"),
        BatchSource.RunWithoutReadings => Repeated("no reading of it counts"),
        BatchSource.RunWithoutCurve without => Repeated(EvidenceWords.Of(without.Why)),
        _ => throw new ArgumentOutOfRangeException(nameof(source), source, "not a case of the closed set"),
    };

    /// <summary>What the maker must know.</summary>
    public static string Of(BatchNote note) => note switch
    {
        BatchNote.FewScaleSteps few => string.Create(CultureInfo.InvariantCulture, $"the smallest addition is under three steps of the "
            + $"scale ({few.Step.Grams:0.####} g): dilute the thickener with water (at least 1:{few.Water:0}), enter the dilution, and "
            + $"weigh that instead, or use a scale of {few.Needed.Grams:0.####} g"),
        BatchNote.BaseChanged changed => $"in the run {Changes(changed)}: what carries over is the dose, not the grams that were poured",
        BatchNote.WaterOnItsOwn water => string.Create(CultureInfo.InvariantCulture, $"water was poured into the run on its own "
            + $"({water.OnBase.Percent:0.00} g for 100 g of base now): here it is weighed in with the base"),
        BatchNote.DensityTaken taken => $"no density is given for '{taken.Thickener}': 1.0 g/mL is assumed for the batch's volume",
        BatchNote.OrderOfRun => "an equal part of each thickener goes in at a time, in the order of the run; keep to that order, as it "
            + "can matter",
        BatchNote.ReadingsDecide => "a larger vessel mixes more slowly than a cup, other lots thicken differently, and colour or filler "
            + "shifts the curve: the readings decide, not the last gram of the plan",
        BatchNote.OfEvidence evidence => EvidenceWords.Of(evidence.Warning),
        _ => throw new ArgumentOutOfRangeException(nameof(note), note, "not a case of the closed set"),
    };

    private static string Where(bool isOver) => isOver ? "over" : "short of the band";

    private static string High(DoseEstimate named)
        => named.High is { } end ? FormattableString.Invariant($"{end.Percent:0.00} %") : "more than was read";

    private static string Repeated(string why) => $"The batch repeats the doses of the run. Its curve can't show how far to go at once "
        + $"({why}), so after the first doses the rest follows in three equal parts. Whether the run ended in band is not judged here; "
        + "'viscolog advise' does that.";

    private static string Changes(BatchNote.BaseChanged changed)
    {
        string[] changes =
        [
            .. changed.Taken > Mass.None ? [FormattableString.Invariant($"{changed.Taken.Grams:0.##} g of samples were taken")]
                : Array.Empty<string>(),
            .. changed.Added > Mass.None ? [FormattableString.Invariant($"{changed.Added.Grams:0.##} g of base was added to let it down")]
                : Array.Empty<string>(),
        ];
        return string.Join(" and ", changes);
    }
}
