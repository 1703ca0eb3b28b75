using System.Collections.Immutable;
using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;

namespace Viscolog.RunFiles;

/// <summary>A column that holds what the method showed.</summary>
/// <param name="Column">The column.</param>
/// <param name="Make">Makes the value of its number and the speed beside it (0 where none belongs there).</param>
/// <param name="Methods">The kinds of method that read it.</param>
internal sealed record ValueColumn(Column Column, Func<double, double, InstrumentValue> Make, params ImmutableArray<MethodKind> Methods)
{
    /// <summary>Every such column. A rotational viscometer may show torque or work the viscosity out itself.</summary>
    public static ImmutableArray<ValueColumn> All { get; } =
    [
        new(Columns.MilliPascalSeconds, Direct, MethodKind.Direct, MethodKind.Rotational),
        new(Columns.Centipoise, Direct, MethodKind.Direct, MethodKind.Rotational),
        new(Columns.PascalSeconds, Direct, MethodKind.Direct, MethodKind.Rotational),
        new(Columns.Poise, Direct, MethodKind.Direct, MethodKind.Rotational),
        new(Columns.CupSeconds, (s, _) => new InstrumentValue.CupTime(FileNumbers.Span(s)), MethodKind.EffluxCup, MethodKind.DipCup),
        new(Columns.KrebsUnits, (ku, _) => new InstrumentValue.Krebs(ku), MethodKind.Krebs),
        new(Columns.TorquePercent, (torque, rpm) => new InstrumentValue.Torque(Percentage.FromPercent(torque), rpm), MethodKind.Rotational),
        new(Columns.Plain, (value, _) => new InstrumentValue.Plain(value), MethodKind.FallingBall, MethodKind.Slump),
    ];

    /// <summary>The column that a value is written in.</summary>
    public static ValueColumn Of(InstrumentValue value) => All.First(c => c.Column.Show(new() { Reading = new() { Value = value } }) is not null);

    /// <summary>What to expect in a column that the method does not read.</summary>
    public static string NotRead(Method method) => $"an empty cell: the method {method.Id} reads {Fitting(method)}";

    /// <summary>The names of the columns that the method reads, in words.</summary>
    private static string Fitting(Method method) => string.Join(" or ", All.Where(v => v.Fits(method)).Select(v => v.Column.Name));

    /// <summary>Whether the method reads this column.</summary>
    public bool Fits(Method method) => Methods.Contains(method.Kind);

    private static InstrumentValue.Direct Direct(double milliPascalSeconds, double speed)
        => new(Viscosity.FromMilliPascalSeconds(milliPascalSeconds));
}
