using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>How much base brings a pot of two thickeners back, or makes room again; both doses fall alike.</summary>
internal sealed class PairLetDown(PairSituation at, Pot pot, Run run)
{
    /// <summary>Base that is never exceeded, over the base now in the pot.</summary>
    private const double Most = 9;

    /// <summary>Base to add and why.</summary>
    internal sealed record Outcome(Mass Base, string Why);

    /// <summary>Base that brings the median body down to the aim; null where none does.</summary>
    public Outcome? ForBody() => For(
        (body, strings) => at.Posterior.LnBodyAt(body, strings).Quantile(0.5) <= at.Band.Aim.Ln,
        "The body is over the band and an addition can't be taken out again: base brings both doses back down. What the string then lacks can follow in small doses.");

    /// <summary>Base that brings the median string down to the aim; null where none does.</summary>
    public Outcome? ForString() => For(
        (body, strings) => at.Posterior.LnStringAt(body, strings).Quantile(0.5) <= at.StringAim,
        "The string is over its band and an addition can't be taken out again: base brings both doses back down. What the body then lacks can follow in small doses.");

    /// <summary>Base after which the string can arrive before the body passes; null where none does.</summary>
    /// <param name="stringEnd">Dose of the string thickener that the string needs.</param>
    public Outcome? ForRoom(double stringEnd) => For(
        (body, strings) => at.Posterior.LnBodyAt(body, at.StringDoseFor(body, strings)).Quantile(0.5) <= at.Band.Aim.Ln,
        FormattableString.Invariant(
            $"The body would pass its band before the string arrives: the string wants about {stringEnd - at.StringNow:0.0#} % more {at.Posterior.Evidence.Roles.StringThickener.Name}, and that thickens too. Base now makes room for it."));

    /// <summary>Base after which the body thickener still to come leaves the string in band; null where none does.</summary>
    /// <param name="bodyEnd">Dose of the body thickener that the body needs.</param>
    public Outcome? ForHeadroom(double bodyEnd) => For(
        (body, strings) => at.Posterior.LnStringAt(at.BodyDoseFor(strings, body), strings).Quantile(0.5) <= at.StringAim - ((at.HighString - at.StringAim) / 4),
        FormattableString.Invariant(
            $"The string stands near the top of its band, and the {bodyEnd - at.BodyNow:0.0#} % {at.Posterior.Evidence.Roles.BodyThickener.Name} that the body still wants may carry it over. Base now makes room for it."));

    private Outcome? For(Func<double, double, bool> isEnough, string why)
    {
        bool Enough(double parts) => isEnough(at.BodyNow / (1 + parts), at.StringNow / (1 + parts));
        if (!Enough(Most))
        {
            return null;
        }

        var (low, high) = (0.0, Most);
        for (var i = 0; i < 14; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Enough(middle) ? (low, middle) : (middle, high);
        }

        var scale = run.ScaleStepInForce.Grams;
        var grams = Math.Max(scale, Math.Round(high * pot.Base.Grams / scale) * scale);
        return new(Mass.FromGrams(Math.Round(grams, 9)), why);
    }
}
