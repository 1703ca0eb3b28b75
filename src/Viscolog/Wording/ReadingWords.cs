using Viscolog.Core.Measuring;

namespace Viscolog.Wording;

/// <summary>What stands in a row of a run, as tables show it; nothing where nothing is.</summary>
internal static class ReadingWords
{
    /// <summary>What a method's readings are in.</summary>
    public static string Unit(Method method)
        => method.Scales[0].IsTime ? Say("cup s") : method.Scales[0] == InstrumentScale.Plain ? Say("reading", "head") : method.Unit;

    /// <summary>The unit of what one types of a method's reading alone.</summary>
    public static string Typed(Method method) => method.Scales[0].HasSpeed ? "%" : method.Unit;

    /// <summary>The value as it was entered, no digit left out.</summary>
    public static string Exact(InstrumentValue? value)
        => value?.Scale == InstrumentScale.Viscosity ? value.Shown.ToString("#,0.######", Spaced) : Value(value);

    /// <summary>The value as a screen shows it.</summary>
    public static string Value(InstrumentValue? value)
        => value?.Speed is { } rpm ? Say($"{Plain(value.Shown)} % at {Plain(rpm)} rpm")
            : value?.Scale == InstrumentScale.Viscosity ? Shown.Limit(value.Shown) : Plain(value?.Shown);

    public static string Grams(double? value) => value?.ToString("0.00###", Numbers) ?? "";

    public static string Seconds(TimeSpan? span) => span?.TotalSeconds.ToString("0.#", Numbers) ?? "";

    public static string Plain(double? value) => value?.ToString("0.###", Numbers) ?? "";
}
