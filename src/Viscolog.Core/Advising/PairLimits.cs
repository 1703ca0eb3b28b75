using Viscolog.Core.Inference;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>The dose of one of two thickeners beyond which more is wrong, the other staying where it is.</summary>
internal static class PairLimits
{
    private const int Grid = 20;

    /// <summary>Finds the limit.</summary>
    public static DoseLimit Of(Posterior posterior, Thickener thickener, double bodyNow, double stringNow, bool isString)
    {
        // Strings are wanted here.
        var fault = DoseLimits.Fault(posterior.Evidence.Run, thickener, false);
        var top = Math.Min(thickener.UsualRange.Top.Percent, fault?.Dose.Percent ?? double.PositiveInfinity);
        if (posterior.Evidence.Run.TooStiff is { } stiff)
        {
            var from = isString ? stringNow : bodyNow;
            for (var i = 1; i <= Grid && from < top; i++)
            {
                var dose = from + ((top - from) * i / Grid);
                if (posterior.LnBodyAt(isString ? bodyNow : dose, isString ? dose : stringNow).Quantile(0.5) > stiff.Ln)
                {
                    var last = from + ((top - from) * (i - 1) / Grid);
                    return new(Dose.FromPercent(last), FormattableString.Invariant($"from {last:0.0#} % on the pot is expected to be too stiff to stir"));
                }
            }
        }

        return fault is not null && fault.Dose.Percent <= top ? fault : new(Dose.FromPercent(top), FormattableString.Invariant($"the usual range ends at {top:0.##} %"));
    }
}
