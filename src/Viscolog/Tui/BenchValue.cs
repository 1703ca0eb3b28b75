using Viscolog.Core.Measuring;
using Viscolog.RunFiles;

namespace Viscolog.Tui;

/// <summary>What is typed as a reading, by the run's method.</summary>
internal static class BenchValue
{
    /// <summary>The unit beside the field.</summary>
    public static string Unit(Method method) => method.Kind switch
    {
        MethodKind.EffluxCup or MethodKind.DipCup => "s",
        MethodKind.Krebs => "KU",
        MethodKind.FallingBall => "s",
        MethodKind.Slump => "mm",
        _ => "mPa·s",
    };

    /// <summary>The value; null with the reason.</summary>
    public static InstrumentValue? Read(string text, Method method, out string? error)
    {
        var column = ValueColumn.All.First(c => c.Fits(method) && c.Column != Columns.TorquePercent);
        return TypedNumber.Read(text, column.Column.Range!, out error) is { } value ? column.Make(value, 0) : null;
    }
}
