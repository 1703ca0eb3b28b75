using Viscolog.Core.Measuring;
using Viscolog.RunFiles;
using Viscolog.Tables;

namespace Viscolog.OilFiles;

/// <summary>The columns of an oils file; what is called as in run files means the same.</summary>
internal static class OilColumns
{
    public const string Method = "method";
    public const string Oil = "oil";
    public const string Certified = "certified_mpas";
    public const string CertifiedAt = "certified_temp_c";
    public const string Uncertainty = "uncertainty_pct";
    public const string Coefficient = "temp_coefficient_k";
    public const string Date = "date";
    public const string At = "temp_c";
    public const string Density = "density_g_ml";
    public const string Factor = "factor_mpas_per_pct";
    public const string Note = "note";
    public const string Void = "void";

    // What is read on a scale of its own tells nothing that a certificate states.
    private static readonly Column[] Shown =
    [
        .. InstrumentScale.All.Where(s => s != InstrumentScale.Plain)
            .SelectMany(s => s.HasSpeed ? (Column[])[Columns.Of(s), Columns.Speed] : [Columns.Of(s)]),
    ];

    /// <summary>Numbers, each with what it may be.</summary>
    public static IReadOnlyDictionary<string, NumberRange> Numbers { get; } =
        new Dictionary<string, NumberRange>(Shown.Select(c => KeyValuePair.Create(c.Name, c.Range!)), StringComparer.OrdinalIgnoreCase)
        {
            [Certified] = NumberRange.Viscosity,
            [CertifiedAt] = NumberRange.Temperature,
            [Uncertainty] = new("%", 0.001, 50),
            [Coefficient] = new("K", 0, 30_000),
            [At] = NumberRange.Temperature,
            [Density] = NumberRange.Density,
            [Factor] = NumberRange.Viscosity,
        };

    /// <summary>Whether a column holds text, whatever it looks like.</summary>
    public static bool IsText(string name) => All.Contains(name, StringComparer.OrdinalIgnoreCase) && !Numbers.ContainsKey(name);

    /// <summary>Those that a reading usually fills: the names of an empty file.</summary>
    public static IReadOnlyList<string> Usual { get; } = [Date, Method, Oil, Certified, CertifiedAt, InstrumentScale.Viscosity.Name, At];

    /// <summary>Every column, in the order in which they are written.</summary>
    public static IReadOnlyList<string> All { get; } =
        [Date, Method, Oil, Certified, CertifiedAt, Uncertainty, Coefficient, .. Shown.Select(c => c.Name), At, Density, Factor, Note,
            Void];
}
