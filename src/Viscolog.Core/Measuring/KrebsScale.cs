using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>
/// Krebs units to viscosity. There is no trusted closed formula: ln η is interpolated between the standard oils that ASTM D562-10,
/// note 1, names (4, 10 and 14 P read about 70, 85 and 95 KU), and carried on in a straight line over the instrument's useful range of
/// about 2 to 50 P.
/// </summary>
public static class KrebsScale
{
    private const double LeastPoise = 2;
    private const double MostPoise = 50;
    private const double OnAnchors = 0.1;
    private const double BesideAnchors = 0.25;

    /// <summary>An instrument passes where it shows an oil's Krebs units within 5 % (ASTM D562-01): an even spread either way.</summary>
    private static readonly double Instrument = 0.05 / Math.Sqrt(3);

    private static readonly (double Units, double LnPoise)[] Anchors = [(70, Math.Log(4)), (85, Math.Log(10)), (95, Math.Log(14))];

    /// <summary>Turns Krebs units into a viscosity.</summary>
    /// <param name="units">In KU; above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not above 0 or not finite.</exception>
    public static Conversion Convert(double units)
    {
        Guard.Positive(units);
        var (low, slope) = Segment(units);
        var ln = low.LnPoise + ((units - low.Units) * slope);
        if (ln < Math.Log(LeastPoise) || ln > Math.Log(MostPoise))
        {
            return new Conversion.Refused(new ConversionRefusal.OutsidePaddle(units, ln < Math.Log(LeastPoise)));
        }

        var isInside = units >= Anchors[0].Units && units <= Anchors[^1].Units;
        return new Conversion.Converted(new(ReadingFormula.Krebs)
        {
            Dynamic = Viscosity.FromMilliPascalSeconds(100 * Math.Exp(ln)),
            Repeatability = Method.Find("krebs")!.RepeatabilityAt(new InstrumentValue.Krebs(units)),
            CalibrationUncertainty = Percentage.FromFraction(
                double.Hypot(isInside ? OnAnchors : BesideAnchors, Instrument * LnSlope(units))),
            Warnings = [isInside ? new ReadingWarning.BetweenOils() : new ReadingWarning.BeyondOils()],
        });
    }

    /// <summary>d ln η/d ln KU: so many per cent of viscosity go with 1 % of Krebs units.</summary>
    internal static double LnSlope(double units) => units * Segment(units).Slope;

    private static ((double Units, double LnPoise) From, double Slope) Segment(double units)
    {
        var (low, high) = units < Anchors[1].Units ? (Anchors[0], Anchors[1]) : (Anchors[1], Anchors[2]);
        return (low, (high.LnPoise - low.LnPoise) / (high.Units - low.Units));
    }
}
