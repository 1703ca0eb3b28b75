using System.Globalization;
using Viscolog.Core.Pots;
using Viscolog.Plots;

namespace Viscolog.Wording;

/// <summary>One line that tells which pot this is.</summary>
internal static class RunTitle
{
    public static string Of(Run run)
    {
        string?[] parts =
        [
            run.Name is { } title ? PlotText.Shorten(title, 60) : null,
            run.Base.Name is { } name ? $"base {name}, {run.BaseMass.Grams.ToString("#,0.####", CultureInfo.InvariantCulture).Replace(',', '\u2009')} g" : null,
            run.MethodInForce == Core.Measuring.Method.Direct ? null : run.MethodInForce.Id,
            run.ReferenceTemperatureInForce.Celsius.ToString("0.#", CultureInfo.InvariantCulture) + " °C",
        ];
        return string.Join(" · ", parts.OfType<string>());
    }
}
