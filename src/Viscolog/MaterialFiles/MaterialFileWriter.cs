using Viscolog.Tables;

namespace Viscolog.MaterialFiles;

/// <summary>Writes materials files: UTF-8 without byte order mark, LF, commas, decimal points.</summary>
internal static class MaterialFileWriter
{
    /// <summary>Writes the materials, kind by kind, each kind by name; the stream stays open.</summary>
    /// <param name="rows">The materials.</param>
    /// <param name="stream">Where to.</param>
    /// <param name="spreadsheetSafe">Whether to put a mark before texts that a spreadsheet would take for formulas.</param>
    /// <exception cref="ArgumentException">A name can't stand in a file (see <see cref="MaterialKind.CanName"/>).</exception>
    public static void Write(IEnumerable<MaterialRow> rows, Stream stream, bool spreadsheetSafe = false)
    {
        rows = [.. rows];
        if (rows.FirstOrDefault(r => !MaterialKind.CanName(MaterialCells.KindOf(r.Material), r.Material.Name)) is { } odd)
        {
            throw new ArgumentException($"the name '{odd.Material.Name}' can't stand in a materials file", nameof(rows));
        }

        var sorted = rows.OrderBy(r => MaterialKind.All.ToList().IndexOf(MaterialCells.KindOf(r.Material)))
            .ThenBy(r => r.Material.Name, StringComparer.Ordinal)
            .Select(r => (r.Material, Cells: MaterialCells.Of(r).ToDictionary(c => c.Key, c => c.Value, StringComparer.OrdinalIgnoreCase)))
            .ToList();
        // Capitals make no difference, so columns of several files that differ in them only are one column.
        var used = sorted.SelectMany(r => r.Cells.Keys).Order(StringComparer.Ordinal).Distinct(StringComparer.OrdinalIgnoreCase)
            .ToHashSet(StringComparer.OrdinalIgnoreCase);
        string[] columns =
        [
            .. MaterialColumns.All.Select(c => c.Name).Where(used.Contains),
            .. used.Where(u => !MaterialColumns.ByName.ContainsKey(u)).Order(StringComparer.Ordinal),
        ];
        using var writer = TableWriter.Create(stream, spreadsheetSafe);
        writer.WriteComment($" {MaterialFileReader.Key.Line}");
        TableWriter.Names(writer, ["kind", "name", .. columns]);
        foreach (var (material, cells) in sorted)
        {
            TableWriter.Row(
                writer, [MaterialCells.KindOf(material), material.Name, .. columns.Select(c => cells.GetValueOrDefault(c, ""))]);
        }
    }
}
