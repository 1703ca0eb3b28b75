using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>How far a method reads off, as certified oils show it.</summary>
/// <param name="Condition">Method and speed.</param>
/// <param name="LnBias">Mean of ln(read/certified) over the last day's readings: 0.05 is 5 % too high.</param>
/// <param name="Uncertainty">Its standard uncertainty, relative: repeatability over √n with certificate and temperature.</param>
/// <param name="Readings">Readings of that day.</param>
/// <param name="LastChecked">That day.</param>
/// <param name="Change">How far the bias moved since the check before, in ln; null where there was none.</param>
public sealed record MethodDrift(
    ShearCondition Condition, double LnBias, Percentage Uncertainty, int Readings, DateOnly LastChecked, double? Change)
{
    /// <summary>Days after which a check is old (common practice: a month).</summary>
    public const int DaysGood = 31;

    /// <summary>Standard uncertainties from which on a bias differs significantly from zero (about 95 %).</summary>
    private const double Told = 2;

    /// <summary>Whether the bias differs significantly from zero.</summary>
    public bool IsBiased => Math.Abs(LnBias) > Told * Uncertainty.Fraction;

    /// <summary>
    /// The relative standard uncertainty that a verdict by this method has to carry for the instrument: that of the bias, and the bias
    /// itself where it is left in.
    /// </summary>
    public Percentage ForVerdicts => IsBiased
        ? Uncertainty
        : Percentage.FromFraction(Math.Sqrt((Uncertainty.Fraction * Uncertainty.Fraction) + (LnBias * LnBias)));

    /// <summary>Whether the check is too old to rely on.</summary>
    /// <param name="today">The day it is asked.</param>
    public bool IsOld(DateOnly today) => DaysSince(today) > DaysGood;

    /// <summary>Days since the check.</summary>
    /// <param name="today">The day it is asked.</param>
    public int DaysSince(DateOnly today) => today.DayNumber - LastChecked.DayNumber;

    /// <summary>The first day whose readings are in it: checks that agree are pooled.</summary>
    public DateOnly Since { get; init; } = LastChecked;

    /// <summary>Days whose readings are in it.</summary>
    public int Days { get; init; } = 1;

    /// <summary>
    /// Sums up the readings of oils by one method; null where there are none. The last day counts, and the days before it as long as they
    /// are within <see cref="DaysGood"/> of it and agree with those after them.
    /// </summary>
    /// <param name="readings">In any order.</param>
    /// <param name="condition">Method and speed; readings under another are left aside.</param>
    /// <param name="repeatability">Of the method, relative.</param>
    public static MethodDrift? Of(IEnumerable<OilReading> readings, ShearCondition condition, Percentage repeatability)
    {
        var days = readings.Where(r => r.Condition == condition).GroupBy(r => r.On).OrderByDescending(g => g.Key)
            .Select(g => g.ToArray()).ToArray();
        if (days.Length == 0)
        {
            return null;
        }

        var last = days[0][0].On;
        var pool = OilPool.Of([.. days[0]], repeatability);
        double? change = days.Length > 1 ? pool.Bias - OilPool.Of([.. days[1]], repeatability).Bias : null;
        var pooled = 1;
        while (pooled < days.Length && last.DayNumber - days[pooled][0].On.DayNumber <= DaysGood && pool.Agrees(days[pooled], Told))
        {
            pool = OilPool.Of([.. pool.Readings, .. days[pooled]], repeatability);
            pooled++;
        }

        return new(condition, pool.Bias, Percentage.FromFraction(pool.Sd), pool.Readings.Length, last, change)
        {
            Since = days[pooled - 1][0].On,
            Days = pooled,
        };
    }
}

/// <summary>An oil whose viscosity a certificate states.</summary>
/// <param name="Name">As on the bottle.</param>
/// <param name="Viscosity">Stated value.</param>
/// <param name="At">The temperature that it is stated at.</param>
/// <param name="Uncertainty">Relative standard uncertainty of the stated value (half of an expanded one with k = 2).</param>
public sealed record CertifiedOil(string Name, Viscosity Viscosity, Temperature At, Percentage Uncertainty)
{
    /// <summary>
    /// How the oil's viscosity goes with temperature; null for the default, which is poor for oils: read it within 0.5 °C then.
    /// </summary>
    public TemperatureCoefficient? TemperatureCoefficient { get; init; }
}

/// <summary>A certified oil read by a method.</summary>
/// <param name="Condition">Method and speed.</param>
/// <param name="Oil">The oil.</param>
/// <param name="Read">What the method told.</param>
/// <param name="At">Temperature of the oil.</param>
/// <param name="On">The day.</param>
public sealed record OilReading(ShearCondition Condition, CertifiedOil Oil, Viscosity Read, Temperature At, DateOnly On)
{
    /// <summary>
    /// ln(read/certified), the reading brought to the certificate's temperature, and its standard uncertainty without the repeatability.
    /// </summary>
    public (double Ln, double Sd) Deviation
    {
        get
        {
            var (shift, sd) = TemperatureCorrection.LnShift(At, Oil.At, Oil.TemperatureCoefficient);
            return (Read.Ln + shift - Oil.Viscosity.Ln, Math.Sqrt((sd * sd) + (Oil.Uncertainty.Fraction * Oil.Uncertainty.Fraction)));
        }
    }

    /// <summary>
    /// What the temperature adds to the deviation's standard uncertainty, with the sign of the distance: the coefficient is off by as much
    /// for every reading of the oil.
    /// </summary>
    internal double TemperatureSd
    {
        get
        {
            var (_, sd) = TemperatureCorrection.LnShift(At, Oil.At, Oil.TemperatureCoefficient);
            return At.Celsius < Oil.At.Celsius ? -sd : sd;
        }
    }
}
