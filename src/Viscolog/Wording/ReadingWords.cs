using System.Globalization;
using Viscolog.Core.Measuring;
using Viscolog.Text;

namespace Viscolog.Wording;

/// <summary>What stands in a row of a run, as tables show it; nothing where nothing is.</summary>
internal static class ReadingWords
{
    /// <summary>What a method's readings are in.</summary>
    public static string Unit(Method method) => method.Kind switch
    {
        MethodKind.EffluxCup or MethodKind.DipCup => "cup s",
        MethodKind.Krebs => "KU",
        MethodKind.FallingBall or MethodKind.Slump => "reading",
        _ => "mPa·s",
    };

    /// <summary>The unit of what one types of a method's reading alone.</summary>
    public static string Typed(MethodKind kind) => kind switch
    {
        MethodKind.Krebs => "KU",
        MethodKind.Rotational => "%",
        MethodKind.Slump => "mm",
        _ => "s",
    };

    /// <summary>The value as it was entered, no digit left out.</summary>
    public static string Exact(InstrumentValue? value) => value is InstrumentValue.Direct direct ? direct.Viscosity.MilliPascalSeconds.ToString("#,0.######", PlainText.Spaced) : Value(value);

    /// <summary>The value to three figures, as a screen shows it.</summary>
    public static string Value(InstrumentValue? value) => value switch
    {
        InstrumentValue.Direct direct => Shown.Number(direct.Viscosity.MilliPascalSeconds),
        InstrumentValue.CupTime cup => Plain(cup.Time.TotalSeconds),
        InstrumentValue.Krebs krebs => Plain(krebs.Units),
        InstrumentValue.Torque torque => $"{Plain(torque.OfFullScale.Percent)} % at {Plain(torque.RevolutionsPerMinute)} rpm",
        InstrumentValue.Plain plain => Plain(plain.Value),
        _ => "",
    };

    public static string Grams(double? value) => value?.ToString("0.00###", CultureInfo.InvariantCulture) ?? "";

    public static string Seconds(TimeSpan? span) => span?.TotalSeconds.ToString("0.#", CultureInfo.InvariantCulture) ?? "";

    public static string Plain(double? value) => value?.ToString("0.###", CultureInfo.InvariantCulture) ?? "";
}
