using System.Globalization;
using Viscolog.Core.Quantities;

namespace Viscolog.Reports;

/// <summary>Numbers as tables show them: decimals by what the scale or the method tells, thousands set apart by a thin space.</summary>
internal static class Figures
{
    /// <summary>Grams to the step of a scale.</summary>
    public static string Grams(Mass mass, Mass step)
        => mass.Grams.ToString("N" + Decimals(step.Grams).ToString(CultureInfo.InvariantCulture), Spaced);

    /// <summary>A step of a scale with its unit.</summary>
    public static string Step(Mass step) => step.Grams.ToString("#,0.####", Spaced) + " g";

    /// <summary>Seconds, tenths where there are any.</summary>
    public static string Seconds(TimeSpan? time) => time?.TotalSeconds.ToString("0.#", Numbers) ?? "";

    public static string Dose(Dose dose) => dose.Percent.ToString("0.00", Numbers);

    public static string OneDecimal(double? value) => value?.ToString("0.0", Numbers) ?? "";

    /// <summary>A size in kg or g, litres or mL, as one says it.</summary>
    public static string Size(Mass mass)
        => mass.Grams >= 1000
            ? (mass.Grams / 1000).ToString("#,0.###", Spaced) + " kg"
            : mass.Grams.ToString("#,0.##", Spaced) + " g";

    /// <inheritdoc cref="Size(Mass)"/>
    public static string Size(Volume volume) => volume.Milliliters >= 1000
        ? (volume.Milliliters / 1000).ToString("#,0.##", Spaced) + " L"
        : volume.Milliliters.ToString("#,0.#", Spaced) + " mL";

    /// <summary>mL to three figures, tenths at the finest.</summary>
    public static string Milliliters(Volume? volume) => volume?.Milliliters switch
    {
        null => "",
        >= 100 and var large => large.ToString("N0", Spaced),
        var small => small.Value.ToString("N1", Spaced),
    };

    /// <summary>Four figures, thousands set apart.</summary>
    public static string FourDigits(double value)
    {
        var decimals = Math.Clamp(3 - (int)Math.Floor(Math.Log10(Math.Max(value, 1e-9))), 0, 6);
        var grain = Math.Pow(10, Math.Max(0, Math.Floor(Math.Log10(Math.Max(value, 1e-9))) - 3));
        return grain > 1
            ? (Math.Round(value / grain) * grain).ToString("N0", Spaced)
            : Math.Round(value, decimals).ToString("#,0." + new string('#', decimals), Spaced);
    }

    private static int Decimals(double step) => Math.Clamp((int)Math.Ceiling(-Math.Log10(step) - 1e-9), 0, 6);
}
