using Viscolog.RunFiles;
using Viscolog.Tables;

namespace Viscolog.TrendFiles;

/// <summary>The columns of a trend file.</summary>
internal static class TrendColumns
{
    public const string Batch = "batch";
    public const string Value = "value";
    public const string Void = "void";
    public const string Ph = "ph";

    public const string Example = "'batch,viscosity_mpas'";

    /// <summary>Columns that say something of a batch but are no values.</summary>
    public static IReadOnlyList<string> Others { get; } = [Batch, "note", "time", Void];

    /// <summary>Readings as run files call them, each in its own unit, as read.</summary>
    public static IReadOnlyDictionary<string, NumberRange> Readings { get; } =
        Columns.Values.Select(v => v.Column).Append(Columns.Ph).Append(Columns.StringLength)
            .ToDictionary(c => c.Name, c => c.Range! with { Shift = 0 }, StringComparer.OrdinalIgnoreCase);

    /// <summary>The numbers that a column of values takes.</summary>
    public static NumberRange RangeOf(string column) => Readings.GetValueOrDefault(column, NumberRange.Any);

    /// <summary>What a column counts, in words.</summary>
    public static string Words(string column) => column.ToUpperInvariant() switch
    {
        "VISCOSITY_MPAS" or "VISCOSITY_CP" or "VISCOSITY_PAS" or "VISCOSITY_P" => "Viscosity",
        "CUP_S" => "Efflux time",
        "KU" => "Krebs",
        "TORQUE_PCT" => "Torque",
        "READING" => "Reading",
        "PH" => "pH",
        "STRING_MM" => "String length",
        "VALUE" => "Value",
        _ => column,
    };

    /// <summary>
    /// The column of the values where none is named: 'value', else a reading as run files call it, a body first, else the first that may
    /// be one; null where there is none.
    /// </summary>
    public static string? Choose(IReadOnlyList<string> names)
    {
        var candidates = names.Where(n => !Others.Contains(n, StringComparer.OrdinalIgnoreCase)).ToList();
        return candidates.Find(n => n.Equals(Value, StringComparison.OrdinalIgnoreCase))
            ?? Readings.Keys.Select(k => candidates.Find(n => n.Equals(k, StringComparison.OrdinalIgnoreCase)))
                .FirstOrDefault(n => n is not null)
            ?? candidates.FirstOrDefault();
    }
}
