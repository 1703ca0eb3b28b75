using Viscolog.Core.Quantities;

namespace Viscolog.Cli.Json;

/// <summary>Rounds to what an answer can tell.</summary>
internal static class Rounded
{
    /// <summary>Four significant digits.</summary>
    public static double Four(double value)
    {
        if (value == 0 || !double.IsFinite(value))
        {
            return value;
        }

        var digits = 3 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        if (digits < 0)
        {
            var grain = Math.Pow(10, -digits);
            return Math.Round(value / grain) * grain;
        }

        return Math.Round(value, Math.Min(digits, 12));
    }

    /// <summary>Six significant digits, for figures that a script compares.</summary>
    public static double Six(double value)
        => value == 0 || !double.IsFinite(value)
            ? value
            : double.Parse(
                value.ToString("G6", System.Globalization.CultureInfo.InvariantCulture),
                System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Grams to a tenth of a milligram.</summary>
    public static double Grams(Mass mass) => Math.Round(mass.Grams, 4);
}
