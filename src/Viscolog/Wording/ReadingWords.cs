using System.Globalization;
using Viscolog.Core.Measuring;
using Viscolog.Text;

namespace Viscolog.Wording;

/// <summary>What stands in a row of a run, as tables show it; nothing where nothing is.</summary>
internal static class ReadingWords
{
    /// <summary>What a method's readings are in.</summary>
    public static string Unit(Method method)
        => method.Scales[0].IsTime ? "cup s" : method.Scales[0] == InstrumentScale.Plain ? "reading" : method.Unit;

    /// <summary>The unit of what one types of a method's reading alone.</summary>
    public static string Typed(Method method) => method.Scales[0].HasSpeed ? "%" : method.Unit;

    /// <summary>The value as it was entered, no digit left out.</summary>
    public static string Exact(InstrumentValue? value)
        => value?.Scale == InstrumentScale.Viscosity ? value.Shown.ToString("#,0.######", PlainText.Spaced) : Value(value);

    /// <summary>The value as a screen shows it.</summary>
    public static string Value(InstrumentValue? value)
        => value?.Speed is { } rpm ? $"{Plain(value.Shown)} % at {Plain(rpm)} rpm"
            : value?.Scale == InstrumentScale.Viscosity ? Shown.Limit(value.Shown) : Plain(value?.Shown);

    public static string Grams(double? value) => value?.ToString("0.00###", CultureInfo.InvariantCulture) ?? "";

    public static string Seconds(TimeSpan? span) => span?.TotalSeconds.ToString("0.#", CultureInfo.InvariantCulture) ?? "";

    public static string Plain(double? value) => value?.ToString("0.###", CultureInfo.InvariantCulture) ?? "";
}
