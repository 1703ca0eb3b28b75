using System.Globalization;
using Viscolog.Core.Pots;
using Viscolog.Text;

namespace Viscolog.Wording;

/// <summary>One line that tells which pot this is.</summary>
internal static class RunTitle
{
    public static string Of(Run run)
    {
        string?[] parts =
        [
            run.Name is { } title ? PlainText.Shorten(TerminalText.Of(title), 60) : null,
            run.Base.Name is { } name ? $"base {name}, {run.BaseMass.Grams.ToString("#,0.####", PlainText.Spaced)} g" : null,
            run.MethodInForce == Core.Measuring.Method.Direct ? null : run.MethodInForce.Id,
            run.ReferenceTemperatureInForce.Celsius.ToString("0.#", CultureInfo.InvariantCulture) + " °C",
        ];
        return string.Join(" · ", parts.OfType<string>());
    }
}
