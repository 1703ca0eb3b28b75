using System.Collections.Frozen;
using Viscolog.Core.Measuring;

namespace Viscolog.RunFiles;

/// <summary>The columns that the format knows.</summary>
internal static class Columns
{
    /// <summary>Name of the thickener poured in.</summary>
    public static readonly Column Thickener = new("thickener", null, r => r.Dosed?.Thickener);

    /// <summary>Grams poured, dilution water included.</summary>
    public static readonly Column AddedGrams = new("added_g", NumberRange.Grams, r => Show(r.Dosed?.Poured.Grams));

    /// <summary>Grams of thickener as supplied for 100 g of base in the pot; written as grams.</summary>
    public static readonly Column AddedPercent = new("added_pct", NumberRange.Dose, _ => null);

    /// <summary>Milliliters of thickener as supplied; written as grams.</summary>
    public static readonly Column AddedMilliliters = new("added_ml", new("mL", 0, 1e9), _ => null);

    /// <summary>Stirring after the addition.</summary>
    public static readonly Column Stir = new("stir_s", NumberRange.Seconds, r => Show(r.Reading?.Stir));

    /// <summary>Standing since stirring ended.</summary>
    public static readonly Column Wait = new("wait_s", NumberRange.Seconds, r => Show(r.Reading?.Wait));

    /// <summary>Viscosity in mPa·s.</summary>
    public static readonly Column MilliPascalSeconds = new("viscosity_mpas", NumberRange.Viscosity, r => Show((r.Reading?.Value as InstrumentValue.Direct)?.Viscosity.MilliPascalSeconds));

    /// <summary>Viscosity in cP, the same number as in mPa·s; written in mPa·s.</summary>
    public static readonly Column Centipoise = new("viscosity_cp", NumberRange.Viscosity with { Unit = "cP" }, _ => null);

    /// <summary>Viscosity in Pa·s; written in mPa·s.</summary>
    public static readonly Column PascalSeconds = new("viscosity_pas", NumberRange.PascalSeconds, _ => null);

    /// <summary>Viscosity in P; written in mPa·s.</summary>
    public static readonly Column Poise = new("viscosity_p", NumberRange.Viscosity with { Unit = "P", Shift = 2 }, _ => null);

    /// <summary>Seconds that a cup took to run out.</summary>
    public static readonly Column CupSeconds = new("cup_s", NumberRange.Seconds with { Least = 0.001 }, r => Show((r.Reading?.Value as InstrumentValue.CupTime)?.Time));

    /// <summary>Krebs units.</summary>
    public static readonly Column KrebsUnits = new("ku", new("KU", 0, 1e6, Above: true), r => Show((r.Reading?.Value as InstrumentValue.Krebs)?.Units));

    /// <summary>Torque of full scale.</summary>
    public static readonly Column TorquePercent = new("torque_pct", new("% of full scale", 0, 1000, Above: true), r => Show((r.Reading?.Value as InstrumentValue.Torque)?.OfFullScale.Percent));

    /// <summary>Speed beside a torque.</summary>
    public static readonly Column Speed = new("rpm", new("1/min", 0, 1e6, Above: true), r => Show((r.Reading?.Value as InstrumentValue.Torque)?.RevolutionsPerMinute));

    /// <summary>A value in the method's own unit.</summary>
    public static readonly Column Plain = new("reading", new("the method's own unit", 0, 1e12), r => Show((r.Reading?.Value as InstrumentValue.Plain)?.Value));

    /// <summary>Temperature of the pot.</summary>
    public static readonly Column Temperature = new("temp_c", NumberRange.Temperature, r => Show(r.Reading?.Temperature?.Celsius));

    /// <summary>Temperature of the pot in °F; written in °C.</summary>
    public static readonly Column Fahrenheit = new("temp_f", new("°F", -459.67, 2e4), _ => null);

    /// <summary>pH of the pot.</summary>
    public static readonly Column Ph = new("ph", new("pH units", 0, 14), r => Show(r.Reading?.Acidity?.Ph));

    /// <summary>String length.</summary>
    public static readonly Column StringLength = new("string_mm", new("mm", 0, 1e6), r => Show(r.Reading?.StringLength?.Millimeters));

    /// <summary>What was seen to be wrong.</summary>
    public static readonly Column Fault = new("fault", null, r => r.Reading?.Fault is { } fault ? FaultNames.Of(fault) : null);

    /// <summary>Sample taken out.</summary>
    public static readonly Column Taken = new("taken_g", NumberRange.Grams, r => Show(r.Taken?.Grams));

    /// <summary>Base added.</summary>
    public static readonly Column LetDown = new("let_down_g", NumberRange.Grams, r => Show(r.LetDown?.Grams));

    /// <summary>Water added.</summary>
    public static readonly Column Water = new("water_g", NumberRange.Grams, r => Show(r.Water?.Grams));

    /// <summary>When it happened.</summary>
    public static readonly Column Time = new("time", null, r => r.Time is { } t ? FileTime.Show(t) : null);

    /// <summary>Why the row counts no more.</summary>
    public static readonly Column Void = new("void", null, r => r.Void);

    /// <summary>Whether the row stands for the void row above it.</summary>
    public static readonly Column Replaces = new("replaces", null, r => r.Replaces ? RowAbove : null);

    /// <summary>How a row that stands for the void row above it says so.</summary>
    public const string RowAbove = "above";

    /// <summary>A note.</summary>
    public static readonly Column Note = new("note", null, r => r.Note);

    /// <summary>Every column, in the order in which they are written.</summary>
    public static IReadOnlyList<Column> All { get; } =
    [
        Time, Taken, LetDown, Water, Thickener, AddedGrams, AddedPercent, AddedMilliliters, Stir, Wait, MilliPascalSeconds, Centipoise, PascalSeconds, Poise, CupSeconds,
        KrebsUnits, TorquePercent, Speed, Plain, Temperature, Fahrenheit, Ph, StringLength, Fault, Note, Void, Replaces,
    ];

    /// <summary>The columns by name; capitals make no difference.</summary>
    public static FrozenDictionary<string, Column> ByName { get; } = All.ToFrozenDictionary(c => c.Name, StringComparer.OrdinalIgnoreCase);

    private static string? Show(double? value) => value is { } v ? FileNumbers.Show(v) : null;

    private static string? Show(TimeSpan? value) => value is { } v ? FileNumbers.Show(v) : null;
}
