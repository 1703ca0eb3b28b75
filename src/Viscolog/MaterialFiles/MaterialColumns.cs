using System.Collections.Frozen;
using Viscolog.Core.Checking;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Feeds;
using Viscolog.RunFiles;
using Viscolog.Tables;

namespace Viscolog.MaterialFiles;

/// <summary>
/// The columns of a materials file besides <c>kind</c> and <c>name</c>; they are called as the same things are in run files.
/// </summary>
internal static class MaterialColumns
{
    private static readonly string[] Specified = [MaterialKind.Specification];
    private static readonly string[] Instruments = [MaterialKind.Instrument];
    private static readonly NumberRange Count = new("", 1, 1000);
    private static readonly NumberRange ToleranceRange = new("%", 0.001, 99);

    /// <summary>Every column, in the order in which they are written.</summary>
    public static IReadOnlyList<MaterialColumn> All { get; } =
    [
        .. ThickenerLine.Traits.Where(t => !t.IsOfRun).Select(Trait),
        new(
            "method",
            [MaterialKind.Method, MaterialKind.Specification],
            TakeMethod,
            m => (m is Material.OfMethod use ? use.Method.Method : Of(m)?.Method)?.Id),
        new(
            "repeatability_pct",
            [MaterialKind.Method],
            (d, at, text) => d.Repeatability = Percent(d, at, text, NumberRange.Percent),
            m => Number((m as Material.OfMethod)?.Method.Repeatability?.Percent)),
        new(
            "base",
            Specified,
            (d, at, text) => d.Specification = d.Specification with { Base = MaterialName(d, at, MaterialKind.Base, text) },
            m => Of(m)?.Base),
        new(
            "thickener",
            Specified,
            (d, at, text) => d.Specification = d.Specification with { Thickener = MaterialName(d, at, MaterialKind.Thickener, text) },
            m => Of(m)?.Thickener),
        new(
            "target_mpas",
            Specified,
            (d, at, text) => d.Wanted = d.Values.Number(at, text, NumberRange.Viscosity),
            m => Number((Of(m)?.Body as Target.Value)?.Wanted.MilliPascalSeconds)),
        new(
            "target_low_mpas",
            Specified,
            (d, at, text) => d.Low = d.Values.Number(at, text, NumberRange.Viscosity),
            m => Number((Of(m)?.Body as Target.Ends)?.Low.MilliPascalSeconds)),
        new(
            "target_high_mpas",
            Specified,
            (d, at, text) => d.High = d.Values.Number(at, text, NumberRange.Viscosity),
            m => Number((Of(m)?.Body as Target.Ends)?.High.MilliPascalSeconds)),
        new(
            "tolerance_pct",
            Specified,
            (d, at, text) => d.Tolerance = Percent(d, at, text, ToleranceRange),
            m => Number((Of(m)?.Body as Target.Value)?.Tolerance?.Percent)),
        new(
            "target_string_mm",
            Specified,
            TakeString,
            m => Of(m)?.StringLength is { } s ? Rising(s.Low.Millimeters, s.High.Millimeters) : null),
        new("reference_temp_c", Specified, TakeTemperature, m => Number(Of(m)?.ReferenceTemperature?.Celsius)),
        new("ph", Specified, TakePh, m => Of(m)?.Acidity is { } ph ? Rising(ph.Low.Ph, ph.High.Ph) : null),
        new("min_readings", Specified, TakeCount, m => Number(Of(m)?.MinimumReadings)),
        new("reads", Instruments, TakePattern, m => (m as Material.OfInstrument)?.Reads),
        new("source", Instruments, TakeSource, m => (m as Material.OfInstrument)?.Source),
        new(
            "note",
            MaterialKind.All,
            (d, _, text) => d.Note = text,
            m => string.IsNullOrWhiteSpace(m.Note) ? null : m.Note) { IsVerbatim = true },
        new("retired", MaterialKind.All, TakeRetired, m => m.IsRetired ? "yes" : null),
    ];

    /// <summary>The columns by name; capitals make no difference.</summary>
    public static FrozenDictionary<string, MaterialColumn> ByName { get; } = All.ToFrozenDictionary(
        c => c.Name,
        StringComparer.OrdinalIgnoreCase);

    /// <summary>Whether a column holds text, whatever it looks like.</summary>
    public static bool IsText(string name)
        => name is "kind" or "name" or "base" or "thickener" or "method" or "note" or "retired" or "reads" or "source";

    private static MaterialColumn Trait(ThickenerTrait trait)
    {
        string[] kinds = trait.Name == "density_g_ml" ? [MaterialKind.Base, MaterialKind.Thickener] : [MaterialKind.Thickener];
        return new(
            trait.Name,
            kinds,
            (d, at, text) => d.Thickener = trait.Take(d.Thickener, d.Values, at, text),
            m => m switch
            {
                Material.OfThickener thickener => trait.Show(thickener.Thickener),
                Material.OfBase @base when kinds.Contains(MaterialKind.Base, StringComparer.Ordinal)
                    => Number(@base.Base.Density?.GramsPerMilliliter),
                _ => null,
            });
    }

    private static Specification? Of(Material material) => (material as Material.OfSpecification)?.Specification;

    private static string? Number(double? value) => value is { } v ? FileNumbers.Show(v) : null;

    private static string Rising(double low, double high) => $"{FileNumbers.Show(low)}-{FileNumbers.Show(high)}";

    private static Percentage? Percent(MaterialDraft draft, Place at, string text, NumberRange range)
        => draft.Values.Number(at, text, range) is { } value ? Percentage.FromPercent(value) : null;

    private static string MaterialName(MaterialDraft draft, Place at, string kind, string text)
    {
        if (!MaterialKind.CanName(kind, text))
        {
            draft.Values.Findings.Refuse(at, MaterialKind.NameAdvice(kind));
        }

        return text;
    }

    private static void TakeMethod(MaterialDraft draft, Place at, string text)
    {
        draft.Method = Method.Find(text);
        if (draft.Method is null)
        {
            draft.Values.Findings.Refuse(at, HeaderKeys.MethodNames);
        }
    }

    private static void TakeString(MaterialDraft draft, Place at, string text)
    {
        if (draft.Values.Rising(at, text, Columns.StringLength.Range!) is var (low, high))
        {
            draft.Specification = draft.Specification with
            {
                StringLength = new(Length.FromMillimeters(low), Length.FromMillimeters(high)),
            };
        }
    }

    private static void TakePh(MaterialDraft draft, Place at, string text)
    {
        if (draft.Values.Rising(at, text, Columns.Ph.Range!) is var (low, high))
        {
            draft.Specification = draft.Specification with { Acidity = new(Acidity.FromPh(low), Acidity.FromPh(high)) };
        }
    }

    private static void TakeTemperature(MaterialDraft draft, Place at, string text)
    {
        if (draft.Values.Number(at, text, NumberRange.Temperature) is { } celsius)
        {
            draft.Specification = draft.Specification with { ReferenceTemperature = Temperature.FromCelsius(celsius) };
        }
    }

    private static void TakeCount(MaterialDraft draft, Place at, string text)
    {
        if (draft.Values.Number(at, text, Count) is not { } count)
        {
            return;
        }

        if (count != Math.Floor(count))
        {
            draft.Values.Findings.Refuse(at, "a whole number of readings");
            return;
        }

        draft.Specification = draft.Specification with { MinimumReadings = (int)count };
    }

    private static void TakePattern(MaterialDraft draft, Place at, string text)
    {
        if (LinePattern.Read(text, out var error) is { } pattern)
        {
            draft.Reads = pattern.Show();
        }
        else
        {
            draft.Values.Findings.Refuse(at, $"how its lines are read: {error}");
        }
    }

    private static void TakeSource(MaterialDraft draft, Place at, string text)
    {
        if (LineSource.Read(text, out var error) is { } source)
        {
            draft.Source = source.Name;
        }
        else
        {
            draft.Values.Findings.Refuse(at, $"where its lines come from: {error}");
        }
    }

    private static void TakeRetired(MaterialDraft draft, Place at, string text)
    {
        draft.IsRetired = string.Equals(text, "yes", StringComparison.OrdinalIgnoreCase);
        if (!draft.IsRetired && !string.Equals(text, "no", StringComparison.OrdinalIgnoreCase))
        {
            draft.Values.Findings.Refuse(at, "yes, no or an empty cell");
        }
    }
}

/// <summary>A column of a materials file.</summary>
/// <param name="Name">Its name in the header row.</param>
/// <param name="Kinds">The kinds of material that have it.</param>
/// <param name="Take">
/// Takes a cell's text into the material; space at its ends is gone, unless the column keeps texts as they stand.
/// </param>
/// <param name="Show">What a material writes in it; null for an empty cell.</param>
internal sealed record MaterialColumn(
    string Name,
    IReadOnlyList<string> Kinds,
    Action<MaterialDraft, Place, string> Take,
    Func<Material, string?> Show)
{
    /// <summary>Whether the text is kept as it stands.</summary>
    public bool IsVerbatim { get; init; }
}
