using System.Globalization;
using Viscolog.Core.Quantities;

namespace Viscolog.Wording;

/// <summary>
/// Quantities as a person reads them, thousands set apart by a thin space. This is the one place that rounds them for screens, papers and
/// pictures: what is estimated to three significant digits, what is stated to four, so that one value never reads as two.
/// </summary>
internal static class Shown
{
    private const int MostDecimals = 15;
    private const int OfEstimate = 3;
    private const int OfStated = 4;
    private const int OfRound = 6;

    /// <summary>What is estimated or expected.</summary>
    public static string Number(double value) => Figures(value, OfEstimate);

    /// <summary>What is stated or follows from it, such as a target and the edges of its band: four significant digits.</summary>
    public static string Limit(double value) => Figures(value, OfStated);

    /// <summary>What a band allows, told whole: a value beside its edge is in it or not.</summary>
    public static string Edges(ViscosityBand band)
        => Say($"{Round(band.Low.MilliPascalSeconds)} to {Round(band.High.MilliPascalSeconds)}");

    /// <summary>A value that is round by itself, such as a mark of an axis: told whole.</summary>
    public static string Round(double value) => Figures(value, OfRound);

    /// <summary>A body with its standard uncertainty, both to the second digit of the latter.</summary>
    public static string Uncertain(Viscosity body, Viscosity uncertainty)
        => $"{ToUncertainty(body, uncertainty)} ± {ToUncertainty(uncertainty, uncertainty)} mPa·s";

    /// <summary>The number alone, to the second figure of its uncertainty.</summary>
    public static string ToUncertainty(Viscosity value, Viscosity uncertainty)
        => Placed(value.MilliPascalSeconds, 1 - (int)Math.Floor(Math.Log10(uncertainty.MilliPascalSeconds)));

    private static string Figures(double value, int figures) => value == 0 || !double.IsFinite(value)
        ? value.ToString("0", Numbers)
        : Placed(value, figures - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value))));

    private static string Placed(double value, int decimals)
    {
        if (decimals > 0)
        {
            var most = Math.Min(decimals, MostDecimals);
            return Math.Round(value, most).ToString("#,0." + new string('#', most), Spaced);
        }

        var grain = Math.Pow(10, -decimals);
        return (Math.Round(value / grain) * grain).ToString("N0", Spaced);
    }

    /// <summary>A body that is stated: a target, or what was read.</summary>
    public static string Stated(Viscosity viscosity) => Limit(viscosity.MilliPascalSeconds) + " mPa·s";

    public static string Body(Viscosity viscosity) => Number(viscosity.MilliPascalSeconds) + " mPa·s";

    public static string Spread(Estimate estimate)
        => Say($"{Number(estimate.Low.MilliPascalSeconds)} to {Number(estimate.High.MilliPascalSeconds)}");

    public static string Length(Length length) => Number(length.Millimeters) + " mm";

    public static string Spread(LengthEstimate estimate)
        => Say($"{Number(estimate.Low.Millimeters)} to {Number(estimate.High.Millimeters)}");

    public static string Dose(Dose dose) => dose.Percent.ToString("0.00", Numbers) + " %";

    public static string Share(Percentage share) => share.Percent.ToString("0.00", Numbers) + " %";

    /// <summary>A day as ISO 8601 writes it.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Grams(Mass mass) => mass.Grams.ToString("#,0.00###", Spaced) + " g";

    public static string Chance(Percentage chance) => chance.Percent switch
    {
        < 0.1 => Say($"under {0.1} %"),
        > 99.9 => Say($"above {99.9} %"),
        < 10 => chance.Percent.ToString("0.0", Numbers) + " %",
        _ => chance.Percent.ToString("0", Numbers) + " %",
    };

    public static string Duration(TimeSpan time) => time switch
    {
        { TotalSeconds: < 120 } => time.TotalSeconds.ToString("0", Numbers) + " s",
        { TotalMinutes: >= 10, TotalHours: < 2, Seconds: 0 } => Say($"{time.TotalMinutes:0} min"),
        { TotalHours: >= 2, Minutes: 0, Seconds: 0 } => Say($"{time.TotalHours:0} h"),
        { TotalHours: >= 2, Seconds: 0 } => Say($"{Math.Floor(time.TotalHours):0} h {time.Minutes:0} min"),
        _ => Say($"{Math.Floor(time.TotalMinutes):0} min {time.Seconds:00} s"),
    };
}
