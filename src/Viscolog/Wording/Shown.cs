using System.Globalization;
using Viscolog.Core.Quantities;
using Viscolog.Text;

namespace Viscolog.Wording;

/// <summary>Quantities as a person reads them: three significant digits, thousands set apart by a thin space.</summary>
internal static class Shown
{
    public static string Number(double value)
    {
        if (value == 0 || !double.IsFinite(value))
        {
            return value.ToString("0", CultureInfo.InvariantCulture);
        }

        var digits = 2 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        if (digits <= 0)
        {
            var grain = Math.Pow(10, -digits);
            return (Math.Round(value / grain) * grain).ToString("N0", PlainText.Spaced);
        }

        return Math.Round(value, Math.Min(digits, 10)).ToString("0." + new string('#', Math.Min(digits, 10)), CultureInfo.InvariantCulture);
    }

    /// <summary>A limit: told more finely than a reading, four significant digits.</summary>
    public static string Limit(double value)
    {
        if (value == 0 || !double.IsFinite(value))
        {
            return Number(value);
        }

        return Placed(value, 3 - (int)Math.Floor(Math.Log10(Math.Abs(value))));
    }

    /// <summary>A body with its standard uncertainty, both to the second digit of the latter.</summary>
    public static string Uncertain(Viscosity body, Viscosity uncertainty)
        => $"{ToUncertainty(body, uncertainty)} ± {ToUncertainty(uncertainty, uncertainty)} mPa·s";

    /// <summary>The number alone, to the second figure of its uncertainty.</summary>
    public static string ToUncertainty(Viscosity value, Viscosity uncertainty)
        => Placed(value.MilliPascalSeconds, 1 - (int)Math.Floor(Math.Log10(uncertainty.MilliPascalSeconds)));

    private static string Placed(double value, int decimals)
    {
        if (decimals > 0)
        {
            return Math.Round(value, Math.Min(decimals, 10)).ToString("#,0." + new string('#', Math.Min(decimals, 10)), PlainText.Spaced);
        }

        var grain = Math.Pow(10, -decimals);
        return (Math.Round(value / grain) * grain).ToString("N0", PlainText.Spaced);
    }

    public static string Body(Viscosity viscosity) => Number(viscosity.MilliPascalSeconds) + " mPa·s";

    public static string Spread(Estimate estimate)
        => $"{Number(estimate.Low.MilliPascalSeconds)} to {Number(estimate.High.MilliPascalSeconds)}";

    public static string Length(Length length) => Number(length.Millimeters) + " mm";

    public static string Spread(LengthEstimate estimate) => $"{Number(estimate.Low.Millimeters)} to {Number(estimate.High.Millimeters)}";

    public static string Dose(Dose dose) => dose.Percent.ToString("0.00", CultureInfo.InvariantCulture) + " %";

    public static string Share(Percentage share) => share.Percent.ToString("0.00", CultureInfo.InvariantCulture) + " %";

    /// <summary>A day as ISO 8601 writes it.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Grams(Mass mass) => mass.Grams.ToString("#,0.00###", PlainText.Spaced) + " g";

    public static string Chance(Percentage chance) => chance.Percent switch
    {
        < 0.1 => "under 0.1 %",
        > 99.9 => "above 99.9 %",
        < 10 => chance.Percent.ToString("0.0", CultureInfo.InvariantCulture) + " %",
        _ => chance.Percent.ToString("0", CultureInfo.InvariantCulture) + " %",
    };

    public static string Duration(TimeSpan time) => time switch
    {
        { TotalSeconds: < 120 } => time.TotalSeconds.ToString("0", CultureInfo.InvariantCulture) + " s",
        { TotalMinutes: >= 10, TotalHours: < 2, Seconds: 0 } => FormattableString.Invariant($"{time.TotalMinutes:0} min"),
        { TotalHours: >= 2, Minutes: 0, Seconds: 0 } => FormattableString.Invariant($"{time.TotalHours:0} h"),
        { TotalHours: >= 2, Seconds: 0 } => FormattableString.Invariant($"{Math.Floor(time.TotalHours):0} h {time.Minutes:0} min"),
        _ => FormattableString.Invariant($"{Math.Floor(time.TotalMinutes):0} min {time.Seconds:00} s"),
    };
}
