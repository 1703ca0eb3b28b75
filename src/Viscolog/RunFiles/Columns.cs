using System.Collections.Frozen;
using System.Collections.Immutable;
using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;
using Viscolog.Tables;

namespace Viscolog.RunFiles;

/// <summary>The columns that the format knows: the one table by which rows are read and written, in run files and in the journal.</summary>
internal static class Columns
{
    /// <summary>How a row that stands for the void row above it says so.</summary>
    public const string RowAbove = "above";

    /// <summary>Name of the thickener poured in.</summary>
    public static readonly Column Thickener = Text("thickener", r => r.Dosed?.Thickener, (d, text) => d.Thickener = text.Trim());

    /// <summary>Grams poured, dilution water included.</summary>
    public static readonly Column AddedGrams = Amount("added_g", NumberRange.Grams, r => r.Dosed?.Poured.Grams);

    /// <summary>Grams of thickener as supplied for 100 g of base in the pot; written as grams.</summary>
    public static readonly Column AddedPercent = Amount("added_pct", NumberRange.Dose, null);

    /// <summary>Milliliters of thickener as supplied; written as grams.</summary>
    public static readonly Column AddedMilliliters = Amount("added_ml", new("mL", 0, 1e9), null);

    /// <summary>Stirring after the addition.</summary>
    public static readonly Column Stir = new Column.Seconds(
        "stir_s",
        NumberRange.Seconds,
        r => r.Reading?.Stir,
        (d, span) => d.Stir = span);

    /// <summary>Standing since stirring ended.</summary>
    public static readonly Column Wait = new Column.Seconds(
        "wait_s",
        NumberRange.Seconds,
        r => r.Reading?.Wait,
        (d, span) => d.Wait = span);

    /// <summary>Speed beside a torque.</summary>
    public static readonly Column Speed = new Column.Number(
        "rpm",
        new("1/min", 0, 1e6, Above: true),
        r => r.Reading?.Value?.Speed,
        (d, v) => d.Speed = v);

    /// <summary>
    /// The columns that hold what a method showed, each with the scale of it; the first of a scale is the one that is written.
    /// </summary>
    public static readonly ImmutableArray<(Column Column, InstrumentScale Scale)> Values =
    [
        .. InstrumentScale.All.SelectMany(
            s => Units(s).Prepend((s.Name, Range(s))).Select((c, i) => (Shown(s, c.Item1, c.Item2, isStored: i == 0), s))),
    ];

    /// <summary>Temperature of the pot.</summary>
    public static readonly Column Temperature = new Column.Number(
        "temp_c",
        NumberRange.Temperature,
        r => r.Reading?.Temperature?.Celsius,
        (d, v) => d.Temperature = Core.Quantities.Temperature.FromCelsius(v));

    /// <summary>Temperature of the pot in °F; written in °C.</summary>
    public static readonly Column Fahrenheit = new Column.Number(
        "temp_f",
        new("°F", -459.67, 2e4),
        null,
        (d, v) => d.Temperature = OfFahrenheit(v))
    {
        Free = d => d.Temperature is null ? null : $"one temperature per row: {Temperature!.Name} already has one",
    };

    /// <summary>pH of the pot.</summary>
    public static readonly Column Ph = new Column.Number(
        "ph",
        new("pH units", 0, 14),
        r => r.Reading?.Acidity?.Ph,
        (d, v) => d.Acidity = Acidity.FromPh(v));

    /// <summary>String length.</summary>
    public static readonly Column StringLength = new Column.Number(
        "string_mm", new("mm", 0, 1e6), r => r.Reading?.StringLength?.Millimeters, (d, v) => d.StringLength = Length.FromMillimeters(v));

    /// <summary>What was seen to be wrong.</summary>
    public static readonly Column Fault = new Column.Text(
        "fault",
        r => r.Reading?.Fault is { } fault ? FileNames.Faults.Of(fault) : null,
        (d, text) => (d.Fault = FileNames.Faults.Find(text)) is null ? $"one of {FileNames.Faults.List}; anything else goes in "
            + $"note" : null);

    /// <summary>Sample taken out.</summary>
    public static readonly Column Taken = Grams("taken_g", r => r.Taken, (d, mass) => d.Taken = mass);

    /// <summary>Base added.</summary>
    public static readonly Column LetDown = Grams("let_down_g", r => r.LetDown, (d, mass) => d.LetDown = mass);

    /// <summary>Water added.</summary>
    public static readonly Column Water = Grams("water_g", r => r.Water, (d, mass) => d.Water = mass);

    /// <summary>When it happened.</summary>
    public static readonly Column Time = new Column.Text("time", r => r.Time is { } t ? FileTime.Show(t) : null, TakeTime);

    /// <summary>Why the row counts no more.</summary>
    public static readonly Column Void = Text("void", r => r.Void, (d, text) => d.Void = text);

    /// <summary>Whether the row stands for the void row above it.</summary>
    public static readonly Column Replaces = new Column.Text("replaces", r => r.Replaces ? RowAbove : null, TakeReplaces);

    /// <summary>A note.</summary>
    public static readonly Column Note = Text("note", r => r.Note, (d, text) => d.Note = text);

    /// <summary>Every column, in the order in which they are written.</summary>
    public static IReadOnlyList<Column> All { get; } =
    [
        Time, Taken, LetDown, Water, Thickener, AddedGrams, AddedPercent, AddedMilliliters, Stir, Wait,
        .. Values.SelectMany(v => v.Scale.HasSpeed ? (Column[])[v.Column, Speed] : [v.Column]),
        Temperature, Fahrenheit, Ph, StringLength, Fault, Note, Void, Replaces,
    ];

    /// <summary>The columns by name; capitals make no difference.</summary>
    public static FrozenDictionary<string, Column> ByName { get; } = All.ToFrozenDictionary(c => c.Name, StringComparer.OrdinalIgnoreCase);

    /// <summary>The column that values of a scale are written in.</summary>
    public static Column Of(InstrumentScale scale) => Values.First(v => v.Scale == scale).Column;

    /// <summary>The names of the columns that a method reads, in words.</summary>
    public static string Read(Method method)
        => string.Join(" or ", Values.Where(v => method.Scales.Contains(v.Scale)).Select(v => v.Column.Name));

    /// <summary>What to expect in a column that the method does not read.</summary>
    public static string NotRead(Method method) => $"an empty cell: the method {method.Id} reads {Read(method)}";

    // A viscosity may be stated in other units; it is written in mPa·s.
    private static IEnumerable<(string Name, NumberRange Range)> Units(InstrumentScale scale) => scale != InstrumentScale.Viscosity ? [] :
    [
        ("viscosity_cp", NumberRange.Viscosity with { Unit = "cP" }),
        ("viscosity_pas", NumberRange.PascalSeconds),
        ("viscosity_p", NumberRange.Viscosity with { Unit = "P", Shift = 2 }),
    ];

    private static NumberRange Range(InstrumentScale scale) => new(scale.Unit, scale.Least, scale.Most, scale.IsAbove);

    private static Column Shown(InstrumentScale scale, string name, NumberRange range, bool isStored)
    {
        Column column = scale.IsTime
            ? new Column.Seconds(
                name,
                range,
                r => r.Reading?.Value is { } v && v.Scale == scale ? v.Duration : null,
                (d, span) => d.Value = (name, scale, 0, span))
            : new Column.Number(
                name,
                range,
                isStored ? r => r.Reading?.Value is { } v && v.Scale == scale ? v.Shown : null : null,
                (d, number) => d.Value = (name, scale, number, null));
        return column with { Free = d => d.Against(scale) };
    }

    private static Column.Text Text(string name, Func<FileRow, string?> get, Action<RowDraft, string> put) => new(name, get, (d, text) =>
    {
        put(d, text);
        return null;
    });

    private static Column.Number Grams(string name, Func<FileRow, Mass?> get, Action<RowDraft, Mass> put)
        => new(name, NumberRange.Grams, r => get(r)?.Grams, (d, grams) =>
    {
        if (grams > 0)
        {
            put(d, Mass.FromGrams(grams));
        }
    });

    private static Column.Number Amount(string name, NumberRange range, Func<FileRow, double?>? get)
        => new(name, range, get, (d, amount) => d.Added = (name, amount))
        {
            Free = d => d.Added is { } other ? $"one amount: {other.Name} already has one" : null,
        };

    // Exact arithmetic, so that 73.4 °F is 23 °C; the last digits of absolute zero may fall below it.
    private static Temperature OfFahrenheit(double value)
        => Core.Quantities.Temperature.FromCelsius(
            Math.Max(NumberRange.Temperature.Least, (double)Unit.Find("degF")!.ToKept((decimal)value)));

    private static string? TakeTime(RowDraft row, string text)
    {
        row.Time = FileTime.TryParse(text.Trim(), out var time) ? time : null;
        return row.Time is null ? "a date and time with offset (ISO 8601) such as 2026-03-02T09:15:00+01:00" : null;
    }

    private static string? TakeReplaces(RowDraft row, string text)
    {
        row.Replaces = string.Equals(text.Trim(), RowAbove, StringComparison.OrdinalIgnoreCase);
        return row.Replaces ? null : RowAppender.ReplacesExpected;
    }
}
