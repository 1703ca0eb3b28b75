using Viscolog.Core.Observing;

namespace Viscolog.Wording;

/// <summary>What a run's readings say of themselves, in sentences.</summary>
internal static class EvidenceWords
{
    /// <summary>What a reader of the results must know.</summary>
    public static string Of(EvidenceWarning warning) => warning switch
    {
        EvidenceWarning.LeftOut left => Say($"{Readings(left.Readings)} left out: {MethodWords.Of(left.Last)}"),
        EvidenceWarning.TargetBeyondCup { Instead: { } other } target
            => Say($"the target can't be read with {CupWords.Of(target.Cup)}; {CupWords.Of(other)} ({other.Id}) fits it"),
        EvidenceWarning.TargetBeyondCup target
            => Say($"the target can't be read with {CupWords.Of(target.Cup)}; no cup does; use a rotational viscometer"),
        EvidenceWarning.OfReading of => MethodWords.Of(of.Warning),
        EvidenceWarning.YieldStresses => Say("bodies are yield stresses over 1/s: 1 Pa counts as 1000 mPa·s (see docs/science.md, section "
            + "10)"),
        EvidenceWarning.TooFarFromReference far
            => Say($"{Readings(far.Readings)} taken more than 10 °C from the reference temperature, left out; read closer to it"),
        EvidenceWarning.Corrected corrected
            => Say($"{Readings(corrected.Readings)} corrected for temperature with {Of(corrected.By)} (see docs/science.md, section 3)"),
        EvidenceWarning.WithoutTemperature bare
            => Say($"{Readings(bare.Readings)} without a temperature, taken to be at the reference temperature"),
        EvidenceWarning.WithoutWait bare => Say($"{Readings(bare.Readings)} without wait_s, taken to be settled"),
        EvidenceWarning.Thinned thinned => Say($"of {thinned.Readings} readings in steps with very many, {thinned.Kept} count, spread over "
            + $"each step's time"),
        EvidenceWarning.AcidityMoved moved => Say($"the pH changed from {moved.Low:0.0} to {moved.High:0.0} during the run; a curve across "
            + $"a pH change means little"),
        EvidenceWarning.Watered watered
            => Say($"water was added, which shifts the curve of '{watered.Thickener}': readings before it count for less"),
        EvidenceWarning.LowPh low => Say($"at pH {low.Ph:0.0} an alkali-swellable thickener hardly swells: raise the pH first; the curve "
            + $"means little"),
        EvidenceWarning.NoUsualRange { Active: { Fraction: > 0 } active } none => Say($"no usual range is given for '{none.Thickener}', so "
            + $"{none.Assumed.Low.Percent:0.##} to {none.Assumed.Top.Percent:0.##} % is assumed for {active.Percent:0.##} % of active "
            + $"matter; for a strong thickener, give range_pct"),
        EvidenceWarning.NoUsualRange none => Say($"no usual range is given for '{none.Thickener}', so 1 to 5 % is assumed; for a strong "
            + $"thickener, give range_pct"),
        EvidenceWarning.TargetBeyondScale beyond => Say($"the target can't be read at this spindle and speed: full scale there is "
            + $"{beyond.FullScale.MilliPascalSeconds:0.###} mPa·s; choose a lower speed or a smaller spindle before the run starts"),
        _ => throw new ArgumentOutOfRangeException(nameof(warning), warning, "not a case of the closed set"),
    };

    /// <summary>Why the readings can't carry a curve, and what to do.</summary>
    public static string Of(EvidenceTrouble trouble) => trouble switch
    {
        EvidenceTrouble.NoThickener => Say("the run names no thickener; add '# thickener: NAME' to it"),
        EvidenceTrouble.MixedConditions mixed => MethodWords.Mixture(mixed.Conditions),
        EvidenceTrouble.AnotherThickener two => Say($"the pot contains both '{two.Thickener}' and '{two.Other}', and one curve can't "
            + $"describe both: give target_string_mm for advice on body and string together, or use one thickener per run"),
        EvidenceTrouble.NotTwoThickeners => Say("body and string together need two thickeners in the run's header, no more and no fewer"),
        EvidenceTrouble.TooManySteps many => Say($"the run has {many.Steps} steps, and advice looks at {many.Most} at most: one run is one "
            + $"pot, so split the file"),
        EvidenceTrouble.NothingConverted nothing
            => MethodWords.Of(nothing.Reason)
                + (nothing.IsByCup ? Say("; a run uses one cup throughout, so choose it to suit the target") : ""),
        _ => throw new ArgumentOutOfRangeException(nameof(trouble), trouble, "not a case of the closed set"),
    };

    /// <summary>What readings are brought to the reference temperature by.</summary>
    public static string Of(CoefficientInUse by) => by.Origin switch
    {
        CoefficientOrigin.Stated => Say("the coefficient of the run"),
        CoefficientOrigin.Default => Say("a default coefficient"),
        _ => Say($"a coefficient learned from this run ({by.Coefficient.Kelvin:0} K)"),
    };

    private static string Readings(int count)
        => count == 1 ? Say("1 reading") : Say($"{count} readings");
}
