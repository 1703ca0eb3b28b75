using System.Globalization;
using Viscolog.Core.Measuring;

namespace Viscolog.Wording;

/// <summary>Readings in words, by their method.</summary>
internal static class ReadingWords
{
    /// <summary>What stands over a column of readings.</summary>
    public static string Unit(Method method) => method.Kind switch
    {
        MethodKind.EffluxCup or MethodKind.DipCup => "cup s",
        MethodKind.Krebs => "KU",
        MethodKind.FallingBall or MethodKind.Slump => "reading",
        _ => "mPa·s",
    };

    /// <summary>A reading as the instrument shows it; empty where there is none.</summary>
    public static string Value(InstrumentValue? value) => value switch
    {
        InstrumentValue.Direct direct => Shown.Number(direct.Viscosity.MilliPascalSeconds),
        InstrumentValue.CupTime cup => Plain(cup.Time.TotalSeconds),
        InstrumentValue.Krebs krebs => Plain(krebs.Units),
        InstrumentValue.Torque torque => $"{Plain(torque.OfFullScale.Percent)} % at {Plain(torque.RevolutionsPerMinute)} rpm",
        InstrumentValue.Plain plain => Plain(plain.Value),
        _ => "",
    };

    private static string Plain(double? value) => value?.ToString("0.###", CultureInfo.InvariantCulture) ?? "";
}
