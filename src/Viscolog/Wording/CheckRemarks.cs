using Viscolog.Core.Checking;

namespace Viscolog.Wording;

/// <summary>What keeps a batch from being checked, or must be known of its check, in sentences.</summary>
internal static class CheckRemarks
{
    /// <summary>Why a batch can't be checked, and what to do.</summary>
    public static string Of(CheckRefusal refusal) => refusal switch
    {
        CheckRefusal.AsksForNothing nothing => Say($"the specification '{nothing.Specification}' has no limits: give it a body, a pH or a "
            + $"string length"),
        CheckRefusal.OtherMethod other => Say($"the specification '{other.Specification}' asks for readings by {other.Asked.Id}, the run "
            + $"was read by {other.Read.Id}: bodies by different methods can't be compared, read it by {other.Asked.Id}"),
        CheckRefusal.MixedConditions mixed => MethodWords.Mixture(mixed.Conditions),
        CheckRefusal.NoBody no => EvidenceWords.Of(no.Why),
        _ => throw new ArgumentOutOfRangeException(nameof(refusal), refusal, "not a case of the closed set"),
    };

    /// <summary>Why a batch is left out of its product's chart.</summary>
    public static string Of(ValueGap gap) => gap switch
    {
        ValueGap.NotChecked not => Of(not.Refusal),
        ValueGap.NothingSettled => Say("no reading of its last step has settled"),
        ValueGap.NotRead => Say("its last step was not read"),
        ValueGap.TooFewReadings few => Say($"it has {few.There} of the {few.Needed} readings that a value needs"),
        _ => throw new ArgumentOutOfRangeException(nameof(gap), gap, "not a case of the closed set"),
    };

    /// <summary>What a reader of a check must know.</summary>
    public static string Of(CheckWarning warning) => warning switch
    {
        CheckWarning.OfReadings readings => EvidenceWords.Of(readings.Warning),
        CheckWarning.Outliers(1, var of) => Say($"1 of {of} readings is far from the others and counts for almost nothing"),
        CheckWarning.Outliers(var count, var of)
            => Say($"{count} of {of} readings are far from the others and count for almost nothing"),
        CheckWarning.ReadEarly(var count) => count == 1
            ? Say("1 reading was taken before the pot had settled and does not count")
            : Say($"{Many(count)} readings were taken before the pot had settled and do not count"),
        CheckWarning.TooFarFromReference(var count) => count == 1
            ? Say("1 reading taken more than 10 °C from the reference temperature, left out; read closer to it")
            : Say($"{Many(count)} readings taken more than 10 °C from the reference temperature, left out; read closer to it"),
        CheckWarning.NoTemperature(var count, var reference) => count == 1
            ? Say($"1 reading without temperature: taken within 2 °C of {reference.Celsius:0.#} °C")
            : Say($"{Many(count)} readings without temperature: taken within 2 °C of {reference.Celsius:0.#} °C"),
        CheckWarning.NeverChecked never => Say($"{never.Method.Id} has never been checked with a certified oil at this bench, so a bias "
            + $"of the instrument would go unnoticed"),
        CheckWarning.CheckOverdue overdue => DriftWords.Of(overdue.Drift, overdue.Today),
        CheckWarning.FarOil far => Say($"the method was checked with an oil of {far.Oil.MilliPascalSeconds:0.###} mPa·s, far from this "
            + $"batch: its bias may differ here"),
        CheckWarning.OtherBase other => Say($"the specification is for base '{other.Asked}', the run has '{other.Own}'"),
        CheckWarning.OtherThickener other
            => Say($"the specification is for thickener '{other.Asked}', which the run does not name"),
        _ => throw new ArgumentOutOfRangeException(nameof(warning), warning, "not a case of the closed set"),
    };

    private static string Many(int count) => count.ToString("N0", Spaced);
}
