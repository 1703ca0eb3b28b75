using System.Runtime.InteropServices;
using Viscolog.Core.Inference;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Where a pot of two thickeners stands and where it is to go.</summary>
internal sealed class PairSituation
{
    public PairSituation(Posterior posterior, ViscosityBand band, StringBand strings, Pot pot)
    {
        (Posterior, Band, Strings) = (posterior, band, strings);
        var roles = posterior.Evidence.Roles;
        BodyNow = pot.DoseOf(roles.BodyThickener.Name).Percent;
        StringNow = pot.DoseOf(roles.StringThickener.Name).Percent;
        LowString = strings.Low.Millimeters > 0 ? Math.Log(strings.Low.Millimeters) : double.NegativeInfinity;
        HighString = Math.Log(strings.High.Millimeters);
        StringAim = strings.Low.Millimeters > 0 ? (LowString + HighString) / 2 : HighString - Math.Log(2);
        (BodyLimit, StringLimit) = (PairLimits.Of(posterior, roles.BodyThickener, BodyNow, StringNow, false), PairLimits.Of(posterior, roles.StringThickener, BodyNow, StringNow, true));
    }

    public Posterior Posterior { get; }

    public ViscosityBand Band { get; }

    public StringBand Strings { get; }

    /// <summary>Dose of the body thickener now, in %.</summary>
    public double BodyNow { get; }

    /// <summary>Dose of the string thickener now, in %.</summary>
    public double StringNow { get; }

    public double LowString { get; }

    public double HighString { get; }

    /// <summary>ln of the string aimed at: the middle of the band on the scale where readings scatter evenly.</summary>
    public double StringAim { get; }

    public DoseLimit BodyLimit { get; }

    public DoseLimit StringLimit { get; }

    /// <summary>The chances at two doses in %.</summary>
    public PairChances At(double body, double @string)
    {
        var (b, s) = (Posterior.LnBodyAt(body, @string), Posterior.LnStringAt(body, @string));
        var (bodyOver, stringOver) = (b.ChanceAbove(Band.High.Ln), s.ChanceAbove(HighString));
        return new(Math.Max(0, b.ChanceAbove(Band.Low.Ln) - bodyOver), bodyOver, Math.Max(0, s.ChanceAbove(LowString) - stringOver), stringOver);
    }

    public double BodyOver(double body, double @string) => Posterior.LnBodyAt(body, @string).ChanceAbove(Band.High.Ln);

    public double StringOver(double body, double @string) => Posterior.LnStringAt(body, @string).ChanceAbove(HighString);

    /// <summary>The least dose of the string thickener from the present one on at which the median string is at the aim; the limit where none is.</summary>
    public double StringDoseFor(double body, double from) => First(from, Math.Max(from, StringLimit.Dose.Percent), x => Posterior.LnStringAt(body, x).Quantile(0.5) >= StringAim);

    /// <summary>The same of the body thickener and the body.</summary>
    public double BodyDoseFor(double @string, double from) => First(from, Math.Max(from, BodyLimit.Dose.Percent), x => Posterior.LnBodyAt(x, @string).Quantile(0.5) >= Band.Aim.Ln);

    /// <summary>The dose of the string thickener that is enough for the string's band with a chance, at a dose of the other.</summary>
    public double StringDoseWanted(double body, double chance)
        => First(StringNow, Math.Max(StringNow, StringLimit.Dose.Percent), x => Posterior.LnStringAt(body, x).ChanceAbove((LowString + StringAim) / 2) >= chance);

    private static double First(double from, double to, Func<double, bool> reached)
    {
        if (to <= from || reached(from))
        {
            return from;
        }

        const int coarse = 8;
        var (low, high) = (from, to);
        for (var i = 1; i <= coarse; i++)
        {
            high = from + ((to - from) * i / coarse);
            if (reached(high))
            {
                break;
            }

            low = high;
        }

        for (var i = 0; i < 7 && high > low; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = reached(middle) ? (low, middle) : (middle, high);
        }

        return high;
    }
}

/// <summary>Chances of body and string at one pair of doses, as fractions.</summary>
/// <param name="BodyIn">The body is in band.</param>
/// <param name="BodyOver">The body is over.</param>
/// <param name="StringIn">The string is in band.</param>
/// <param name="StringOver">The string is over.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct PairChances(double BodyIn, double BodyOver, double StringIn, double StringOver)
{
    /// <summary>Both are in band; given the readings the two are independent.</summary>
    public double Both => BodyIn * StringIn;
}
