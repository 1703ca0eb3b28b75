using System.Globalization;
using Viscolog.Core.Quantities;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>Texts as pictures show them.</summary>
internal static class PlotText
{
    /// <summary>The unit of every viscosity here.</summary>
    public const string Unit = "mPa·s";

    /// <summary>A number in full with thousands set apart, at most three significant figures.</summary>
    public static string Number(double value, char separator = PlainText.ThinSpace) => Rounded(value, 3, separator);

    /// <summary>A limit or target, which somebody gave, to four figures, as everywhere.</summary>
    public static string Limit(Viscosity value, char separator = PlainText.ThinSpace) => Rounded(value.MilliPascalSeconds, 4, separator);

    private static string Rounded(double value, int figures, char separator)
    {
        if (value == 0)
        {
            return "0";
        }

        var digits = figures - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        if (digits > 0)
        {
            return value.ToString("0." + new string('#', Math.Min(digits, 12)), CultureInfo.InvariantCulture);
        }

        // Beyond 15 places a number in full says nothing that a person can read.
        return Math.Abs(value) >= 1e15
            ? value.ToString("0.##E+0", CultureInfo.InvariantCulture)
            : Group(Math.Round(value / Math.Pow(10, -digits)) * Math.Pow(10, -digits), separator);
    }

    /// <summary>A viscosity without its unit.</summary>
    public static string Number(Viscosity value, char separator = PlainText.ThinSpace) => Number(value.MilliPascalSeconds, separator);

    /// <summary>A dose with its unit, to the hundredth that a bench scale tells.</summary>
    public static string Percent(Dose dose) => string.Create(CultureInfo.InvariantCulture, $"{dose.Percent:0.00} %");

    /// <summary>A temperature with its unit.</summary>
    public static string Celsius(Temperature value) => string.Create(CultureInfo.InvariantCulture, $"{value.Celsius:0.0} °C");

    /// <summary>A chance with its unit.</summary>
    public static string Level(Estimate value) => string.Create(CultureInfo.InvariantCulture, $"{value.Level.Percent:0.#} %");

    private static string Group(double value, char separator) => value.ToString("N0", CultureInfo.InvariantCulture).Replace(',', separator);
}
