using Viscolog.Core.Limits;
using Viscolog.Core.Pots;

namespace Viscolog.Wording;

/// <summary>Why a dose is not to be passed, in a phrase.</summary>
internal static class LimitWords
{
    public static string Of(DoseLimit limit)
    {
        var dose = limit.Dose.Percent;
        return limit.Why switch
        {
            LimitReason.UsualRange => Say($"the usual range ends at {dose:0.##} %"),
            LimitReason.TooStiff => Say($"from {dose:0.0#} % on the pot is expected to be too stiff to stir"),
            LimitReason.Flattens { IsBrief: true } => Say($"the curve flattens from {dose:0.0#} %"),
            LimitReason.Flattens => Say(
                $"the curve flattens from {dose:0.0#} %: more adds little body, only water sensitivity and cost"),
            LimitReason.MayPeak => Say($"the body may peak near {dose:0.0#} % and fall beyond it"),
            LimitReason.Falls => Say($"the body falls beyond {dose:0.0#} %"),
            LimitReason.Seen { Fault: ObservedFault.Lumps } => Say($"lumps that stirring did not remove were seen at {dose:0.0#} %"),
            LimitReason.Seen { Fault: ObservedFault.Weeping } => Say($"weeping was seen at {dose:0.0#} %"),
            LimitReason.Seen { Fault: ObservedFault.Strings } => Say($"unwanted strings were seen at {dose:0.0#} %"),
            LimitReason.Seen => Say($"it was seen not to level at {dose:0.0#} %"),
            var other => throw new ArgumentOutOfRangeException(nameof(limit), other, "not a case of the closed set"),
        };
    }
}
