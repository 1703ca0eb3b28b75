using System.Globalization;
using Viscolog.Core.Checking;

namespace Viscolog.Wording;

/// <summary>What keeps a batch from being checked, or must be known of its check, in sentences.</summary>
internal static class CheckRemarks
{
    /// <summary>Why a batch can't be checked, and what to do.</summary>
    public static string Of(CheckRefusal refusal) => refusal switch
    {
        CheckRefusal.AsksForNothing nothing => $"the specification '{nothing.Specification}' has no limits: give it a body, a pH or a "
            + "string length",
        CheckRefusal.OtherMethod other => $"the specification '{other.Specification}' asks for readings by {other.Asked.Id}, the run was "
            + $"read by {other.Read.Id}: bodies by different methods can't be compared, read it by {other.Asked.Id}",
        CheckRefusal.MixedConditions mixed => MethodWords.Mixture(mixed.Conditions),
        CheckRefusal.NoBody no => EvidenceWords.Of(no.Why),
        _ => throw new ArgumentOutOfRangeException(nameof(refusal), refusal, "not a case of the closed set"),
    };

    /// <summary>Why a batch is left out of its product's chart.</summary>
    public static string Of(ValueGap gap) => gap switch
    {
        ValueGap.NotChecked not => Of(not.Refusal),
        ValueGap.NothingSettled => "no reading of its last step has settled",
        ValueGap.NotRead => "its last step was not read",
        ValueGap.TooFewReadings few => string.Create(CultureInfo.InvariantCulture, $"it has {few.There} of the {few.Needed} readings that "
            + $"a value needs"),
        _ => throw new ArgumentOutOfRangeException(nameof(gap), gap, "not a case of the closed set"),
    };

    /// <summary>What a reader of a check must know.</summary>
    public static string Of(CheckWarning warning) => warning switch
    {
        CheckWarning.OfReadings readings => EvidenceWords.Of(readings.Warning),
        CheckWarning.Outliers(var count, var of) => string.Create(CultureInfo.InvariantCulture, $"{count} of {of} readings "
            + $"{(count == 1 ? "is" : "are")} far from the others and {(count == 1 ? "counts" : "count")} for almost nothing"),
        CheckWarning.ReadEarly(var count) => $"{Count.Of(count, "reading was", "readings were")} taken before the pot had settled and "
            + $"{(count == 1 ? "does" : "do")} not count",
        CheckWarning.TooFarFromReference(var count) => $"{Count.Of(count, "reading", "readings")} taken more than 10 °C from the "
            + "reference temperature, left out; read closer to it",
        CheckWarning.NoTemperature(var count, var reference) => string.Create(CultureInfo.InvariantCulture,
            $"{Count.Of(count, "reading", "readings")} without temperature: taken within 2 °C of {reference.Celsius:0.#} °C"),
        CheckWarning.NeverChecked never => $"{never.Method.Id} has never been checked with a certified oil at this bench, so a bias of "
            + "the instrument would go unnoticed",
        CheckWarning.CheckOverdue overdue => DriftWords.Of(overdue.Drift, overdue.Today),
        CheckWarning.FarOil far => string.Create(CultureInfo.InvariantCulture, $"the method was checked with an oil of "
            + $"{far.Oil.MilliPascalSeconds:0.###} mPa·s, far from this batch: its bias may differ here"),
        CheckWarning.OtherBase other => $"the specification is for base '{other.Asked}', the run has '{other.Own}'",
        CheckWarning.OtherThickener other => $"the specification is for thickener '{other.Asked}', which the run does not name",
        _ => throw new ArgumentOutOfRangeException(nameof(warning), warning, "not a case of the closed set"),
    };
}
