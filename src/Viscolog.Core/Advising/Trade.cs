using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Where body and string can't both be had: the nearest that can, and what to trade for it.</summary>
internal static class Trade
{
    /// <summary>Finds it.</summary>
    public static Move Of(Situation at) => Move.GiveUp(Remedy.Trade, Why(at));

    private static AdviceReason Why(Situation at)
    {
        var (first, second) = (at.Thickener(Quantity.Body).Name, at.Thickener(Quantity.Stringiness).Name);
        var place = at.Now.With(Quantity.Stringiness, at.DoseForAim(Quantity.Stringiness, at.Now));
        if (at.Posterior.At(place, Quantity.Stringiness).ChanceAbove(at.Aim(Quantity.Stringiness).Low) < 0.5)
        {
            return new AdviceReason.StringOutOfReach(second, Length(at, place));
        }

        if (at.Over(Quantity.Body, place) > 0.3)
        {
            return new AdviceReason.NotBoth(place.Strings, Body(at, place), Room(at), (first, second));
        }

        var stiffest = Body(at, place.With(Quantity.Body, at.DoseForAim(Quantity.Body, place)));
        return stiffest < at.Band.Low ? new AdviceReason.BodyOutOfReach(first, stiffest) : new AdviceReason.NothingSafe();
    }

    /// <summary>The string that comes with the body in the middle of its band.</summary>
    private static Length Room(Situation at)
    {
        var (now, limit) = (at.Now.Strings.Percent, at.Limit(Quantity.Stringiness).Dose.Percent);
        Doses With(double x) => at.Now.With(Quantity.Stringiness, x);
        return Length(at, With(Threshold.Of(now, limit, x => at.Median(Quantity.Body, With(x)) > at.Band.Aim.Ln, 0, 12).Before));
    }

    private static Viscosity Body(Situation at, Doses doses) => Viscosity.FromLn(at.Median(Quantity.Body, doses));

    private static Length Length(Situation at, Doses doses)
        => Quantities.Length.FromMillimeters(Math.Exp(at.Median(Quantity.Stringiness, doses)));
}
