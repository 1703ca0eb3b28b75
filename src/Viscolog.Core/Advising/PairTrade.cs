using Viscolog.Core.Observing;

namespace Viscolog.Core.Advising;

/// <summary>Where body and string can't both be had: the nearest that can, and what to trade for it.</summary>
internal static class PairTrade
{
    /// <summary>Says it.</summary>
    public static string Of(PairSituation at, PairRoles roles)
    {
        var (first, second) = (roles.BodyThickener.Name, roles.StringThickener.Name);
        var stringDose = at.StringDoseFor(at.BodyNow, at.StringNow);
        var longest = Math.Exp(at.Posterior.LnStringAt(at.BodyNow, stringDose).Quantile(0.5));
        var body = Math.Exp(at.Posterior.LnBodyAt(at.BodyNow, stringDose).Quantile(0.5));
        if (at.Posterior.LnStringAt(at.BodyNow, stringDose).ChanceAbove(at.LowString) < 0.5)
        {
            return FormattableString.Invariant(
                $"Within its dose limit '{second}' is expected to bring the string to {longest:0.#} mm only: aim at a shorter string, or take a thickener that brings more of it.");
        }

        if (at.BodyOver(at.BodyNow, stringDose) > 0.3)
        {
            var room = RoomFor(at);
            return FormattableString.Invariant(
                $"Body and string can't both be had: the string wants {stringDose:0.0#} % '{second}', which brings the body to about {Three(body)} mPa·s. With the body in band the string reaches about {room:0.#} mm. Trade: a shorter string, more body, less '{first}' from the start, or a thinner base.");
        }

        var bodyDose = at.BodyDoseFor(stringDose, at.BodyNow);
        var stiffest = Math.Exp(at.Posterior.LnBodyAt(bodyDose, stringDose).Quantile(0.5));
        return stiffest < at.Band.Low.MilliPascalSeconds
            ? FormattableString.Invariant($"Within the dose limits the body is expected to come up to about {Three(stiffest)} mPa·s only: aim lower, or take a stronger thickener than '{first}' or a base with more body.")
            : "The readings leave no addition whose chance of going over is small enough: repeat the readings, or accept a greater risk.";
    }

    private static double RoomFor(PairSituation at)
    {
        var (low, high) = (at.StringNow, at.StringLimit.Dose.Percent);
        for (var i = 0; i < 12 && high > low; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = at.Posterior.LnBodyAt(at.BodyNow, middle).Quantile(0.5) > at.Band.Aim.Ln ? (low, middle) : (middle, high);
        }

        return Math.Exp(at.Posterior.LnStringAt(at.BodyNow, low).Quantile(0.5));
    }

    private static double Three(double value)
    {
        var grain = Math.Pow(10, Math.Floor(Math.Log10(value)) - 2);
        return Math.Round(value / grain) * grain;
    }
}
