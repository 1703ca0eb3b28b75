using System.Collections.Immutable;
using Viscolog.Core.Checking;
using Viscolog.RunFiles;
using Viscolog.Tables;
using Viscolog.Text;

namespace Viscolog.MaterialFiles;

/// <summary>A material as cells by column, the way files and the log hold it.</summary>
internal static class MaterialCells
{
    /// <summary>The kind of a material, by its name in files.</summary>
    public static string KindOf(Material material) => material switch
    {
        Material.OfBase => MaterialKind.Base,
        Material.OfThickener => MaterialKind.Thickener,
        Material.OfMethod => MaterialKind.Method,
        Material.OfSpecification => MaterialKind.Specification,
        Material.OfInstrument => MaterialKind.Instrument,
        _ => throw new ArgumentOutOfRangeException(nameof(material), material, "not a case of the closed set"),
    };

    /// <summary>The cells that hold something, besides kind and name.</summary>
    public static SortedDictionary<string, string> Of(MaterialRow row)
    {
        var cells = new SortedDictionary<string, string>(row.Unknown, StringComparer.Ordinal);
        foreach (var column in MaterialColumns.All)
        {
            if (column.Show(row.Material) is { } text)
            {
                cells[column.Name] = text;
            }
        }

        return cells;
    }

    /// <summary>The material of such cells; null where the file is refused.</summary>
    /// <param name="kind">A kind.</param>
    /// <param name="name">Its name.</param>
    /// <param name="cells">The cells that hold something.</param>
    /// <param name="values">Reads the values of this file.</param>
    /// <param name="placeOf">Where a column's cell stands; null for the row as a whole.</param>
    public static MaterialRow? Read(
        string kind,
        string name,
        IEnumerable<KeyValuePair<string, string>> cells,
        ValueReader values,
        Func<string?, Place> placeOf)
    {
        var draft = new MaterialDraft(kind, name, values);
        var unknown = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var (column, text) in cells)
        {
            if (!MaterialColumns.ByName.TryGetValue(column, out var known))
            {
                unknown[column] = text;
            }
            else if (!known.Kinds.Contains(kind, StringComparer.Ordinal))
            {
                values.Findings.Refuse(placeOf(column), $"an empty cell: a {kind} has no {known.Name}");
            }
            else
            {
                known.Take(draft, placeOf(column), known.IsVerbatim ? text : text.Trim());
            }
        }

        return values.Findings.Well && draft.Finish(placeOf(null)) is { } material ? new(material, unknown.ToImmutable()) : null;
    }
}

/// <summary>A material with what the format does not know of it.</summary>
/// <param name="Material">The material.</param>
/// <param name="Unknown">The texts of unknown columns by column; empty ones are left out.</param>
internal sealed record MaterialRow(Material Material, ImmutableSortedDictionary<string, string> Unknown);

/// <summary>The kinds of material by their names in files.</summary>
internal static class MaterialKind
{
    public const string Base = "base";
    public const string Thickener = "thickener";
    public const string Method = "method";
    public const string Specification = "specification";
    public const string Instrument = "instrument";

    /// <summary>Every kind, in the order in which files list them.</summary>
    public static IReadOnlyList<string> All { get; } = [Base, Thickener, Method, Specification, Instrument];

    /// <summary>Whether a material of that kind can have that name in a file.</summary>
    public static bool CanName(string kind, string name)
        => name.Length > 0
            && name.Trim().Length == name.Length
            && OneLine.Of(name) == name
            && (kind != Thickener || ThickenerLine.CanName(name));

    /// <summary>What to expect of a name of that kind.</summary>
    public static string NameAdvice(string kind) => kind == Thickener ? "a name on one line, without ';' and '='" : "a name on one line";
}
