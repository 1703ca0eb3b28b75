using Viscolog.Core.Flow;
using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;
using Viscolog.Wording;

namespace Viscolog.Tests.Wording;

/// <summary>Every refusal, warning and hint of methods, readings and flow has a sentence of its own, with its numbers in it.</summary>
public sealed class MethodWordsTests
{
    private static readonly CupEquation Four = Cups.Find(Method.Find("iso-2431-4")!)!;
    private static readonly CupEquation Five = Cups.Find(Method.Find("iso-2431-5")!)!;
    private static readonly ShearCondition Slow = new(Method.Find("rotational")!, 20);
    private static readonly DateOnly Day = new(2026, 3, 2);

    [Fact]
    public void Refusals_of_readings()
    {
        Each<ConversionRefusal>(MethodWords.Of,
        [
            (new ConversionRefusal.BeyondFullScale(Percentage.FromPercent(104)), "104 %"),
            (new ConversionRefusal.OutsideCup(Four, TimeSpan.FromSeconds(115), Five, TimeSpan.FromSeconds(50)),
                "(iso-2431-5) fits: about 50 s"),
            (new ConversionRefusal.OutsideCup(Four, TimeSpan.FromSeconds(3), Five, null), "finer orifice, down to"),
            (new ConversionRefusal.OutsideCup(Four, TimeSpan.FromSeconds(900), null, null), "wider orifice"),
            (new ConversionRefusal.OutsideCup(Four, TimeSpan.FromSeconds(2), null, null), "use a cup with a finer orifice"),
            (new ConversionRefusal.OutsidePaddle(50, true), "50 KU"),
            (new ConversionRefusal.OutsidePaddle(140, false), "rotational viscometer"),
            (new ConversionRefusal.BallFloats(), "denser ball"),
            (new ConversionRefusal.BallTooWide(Percentage.FromPercent(37.5)), "38 %"),
            (new ConversionRefusal.BallTooFast(0.44, Length.FromMillimeters(1.25)), "1.25 mm"),
            (new ConversionRefusal.NoFall(), "0 s"),
            (new ConversionRefusal.SlumpTooSmall(Length.FromMillimeters(2)), "2 mm"),
            (new ConversionRefusal.SlumpTooLarge(Length.FromMillimeters(97)), "97 mm"),
            .. Enum.GetValues<MissingPart>().Select(p => ((ConversionRefusal)new ConversionRefusal.Missing(p), "needs")),
        ]);
    }

    [Fact]
    public void Warnings_and_hints_of_readings()
    {
        Each<ReadingWarning>(MethodWords.Of,
        [
            (new ReadingWarning.LowTorque(Percentage.FromPercent(5), Percentage.FromPercent(20)), "20 % of the value"),
            (new ReadingWarning.BetweenOils(), "interpolated"),
            (new ReadingWarning.BeyondOils(), "extrapolated"),
            (new ReadingWarning.NoJar(Percentage.FromPercent(26.3)), "by 26 %"),
            (new ReadingWarning.ShortFall(), "5 s"),
            (new ReadingWarning.NearlyFloats(), "density"),
            (new ReadingWarning.SmallSlump(), "fifth"),
            (new ReadingWarning.LargeSlump(), "0.85"),
            (new ReadingWarning.OddCylinder(0.5), "0.5 times"),
        ]);
        Each<BetterChoice>(MethodWords.Of,
        [
            (new BetterChoice.AnotherCup(Five, TimeSpan.FromSeconds(41)), "about 41 s"),
            (new BetterChoice.Faster(10), "10 times"),
            (new BetterChoice.Slower(), "near full scale"),
        ]);
    }

    [Fact]
    public void Warnings_and_troubles_of_flow()
    {
        double[] rates = [1, 2, 3, 2, 1];
        var loop = FlowLoop.Find(
            [.. rates.Select((r, i) => new FlowPoint(ShearRate.FromPerSecond(r), Stress.FromPascals(r * (i > 2 ? 1 : 2))))])!;
        var (ten, forty) = (Length.FromMillimeters(10), Length.FromMillimeters(40));
        Each<FlowWarning>(FlowWords.Of,
        [
            (new FlowWarning.StressFalls(ShearRate.FromPerSecond(2.5)), "2.5 1/s"),
            (new FlowWarning.FittedToWayDown(loop), FormattableString.Invariant($"{100 * loop.Part:0.#} %")),
            (new FlowWarning.FittedToBothWays(), "both"),
            (new FlowWarning.NarrowRates(), "factor of ten"),
            (new FlowWarning.TooFewToWeigh(), "6 rates"),
            (new FlowWarning.DoubtfulGeometry(new Geometry.ConcentricCylinder(ten, forty, forty)), "next to the bob"),
            (new FlowWarning.DoubtfulGeometry(new Geometry.ConePlate(ten, 5)), "4 degrees"),
            (new FlowWarning.DoubtfulGeometry(new Geometry.ParallelPlates(ten, ten)), "rim"),
            (new FlowWarning.LowTorques(2, 8), "2 of 8"),
            (new FlowWarning.FlatTorques(), "hardly rises"),
        ]);
        Each<FlowTrouble>(FlowWords.Of,
        [
            (new FlowTrouble.TooFewPoints(3, 4), "at 5 rates"),
            (new FlowTrouble.Undetermined(), "fewer parameters"),
            (new FlowTrouble.NoPlateaus(), "plateaus"),
        ]);
    }

    [Fact]
    public void Warnings_and_troubles_of_a_runs_readings()
    {
        Each<EvidenceWarning>(EvidenceWords.Of,
        [
            (new EvidenceWarning.LeftOut(2, new ConversionRefusal.NoFall()), "2 readings left out: the fall"),
            (new EvidenceWarning.TargetBeyondCup(Four, Five), "(iso-2431-5) fits it"),
            (new EvidenceWarning.TargetBeyondCup(Four, null), "rotational viscometer"),
            (new EvidenceWarning.OfReading(new ReadingWarning.BetweenOils()), "Krebs units"),
            (new EvidenceWarning.YieldStresses(), "1000 mPa·s"),
            (new EvidenceWarning.TooFarFromReference(1), "1 reading taken more than 10 °C"),
            (new EvidenceWarning.Corrected(3, new(TemperatureCoefficient.Stated(4000), CoefficientOrigin.Learned)), "(4000 K)"),
            (new EvidenceWarning.Corrected(3, new(TemperatureCoefficient.Stated(4000), CoefficientOrigin.Stated)), "of the run"),
            (new EvidenceWarning.Corrected(3, new(TemperatureCoefficient.Default, CoefficientOrigin.Default)), "a default"),
            (new EvidenceWarning.WithoutTemperature(4), "4 readings"),
            (new EvidenceWarning.WithoutWait(5), "5 readings"),
            (new EvidenceWarning.Thinned(5000, 60), "of 5000 readings in steps with very many, 60 count"),
            (new EvidenceWarning.AcidityMoved(7.9, 8.6), "from 7.9 to 8.6"),
            (new EvidenceWarning.Watered("T"), "'T'"),
            (new EvidenceWarning.LowPh(6.8), "pH 6.8"),
            (new EvidenceWarning.NoUsualRange("T", DoseRange.Common, null), "'T', so 1 to 5 %"),
            (new EvidenceWarning.NoUsualRange("U", DoseRange.Assumed(Percentage.FromPercent(3)), Percentage.FromPercent(3)), "10 to 50 %"),
            (new EvidenceWarning.TargetBeyondScale(Viscosity.FromMilliPascalSeconds(2000)), "2000 mPa·s"),
        ]);
        Each<EvidenceTrouble>(EvidenceWords.Of,
        [
            (new EvidenceTrouble.NoThickener(), "'# thickener: NAME'"),
            (new EvidenceTrouble.MixedConditions([Slow, Slow with { RevolutionsPerMinute = 50 }]),
                "(rotational at 20 1/min; rotational at 50 1/min)"),
            (new EvidenceTrouble.AnotherThickener("B", "A"), "both 'A' and 'B'"),
            (new EvidenceTrouble.NotTwoThickeners(), "two thickeners"),
            (new EvidenceTrouble.TooManySteps(1200, 1000), "1200 steps"),
            (new EvidenceTrouble.NothingConverted(new ConversionRefusal.NoFall(), false), "enter the seconds"),
            (new EvidenceTrouble.NothingConverted(new ConversionRefusal.NoFall(), true), "one cup"),
        ]);
    }

    [Fact]
    public void A_method_that_reads_certified_oils_off_says_how_far_and_what_to_do()
    {
        var drift = new MethodDrift(Slow, Math.Log(1.05), Percentage.FromPercent(1.2), 2, Day, null);
        Assert.Equal(
            "rotational at 20 1/min: reads 5.0 % too high (± 2.4 %), checked 2 days ago with 2 readings; clean it and check "
                + "again; if the bias remains, have it adjusted",
            DriftWords.Of(drift, Day.AddDays(2)));
        Assert.Contains("checked today", DriftWords.Of(drift with { LnBias = -0.01 }, Day), StringComparison.Ordinal);
        Assert.DoesNotContain("clean it", DriftWords.Of(drift with { LnBias = -0.01 }, Day), StringComparison.Ordinal);
        Assert.EndsWith("; check it again before relying on it", DriftWords.Of(drift, Day.AddDays(32)), StringComparison.Ordinal);
    }

    /// <summary>No two alike, each with what it must say, and no case of the set forgotten.</summary>
    private static void Each<T>(Func<T, string> words, (T Case, string Said)[] cases)
    {
        Assert.All(cases, c => Assert.Contains(c.Said, words(c.Case), StringComparison.Ordinal));
        Assert.Equal(cases.Length, cases.Select(c => words(c.Case)).Distinct(StringComparer.Ordinal).Count());
        Assert.Empty(typeof(T).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(T))).Except(cases.Select(c => c.Case!.GetType())));
    }
}
