using Viscolog.Tables;

namespace Viscolog.OilFiles;

/// <summary>Writes oils files: UTF-8 without byte order mark, LF, commas, decimal points.</summary>
internal static class OilFileWriter
{
    /// <summary>Writes the readings in their order; the stream stays open.</summary>
    /// <param name="rows">The readings.</param>
    /// <param name="stream">Where to.</param>
    /// <param name="spreadsheetSafe">Whether to put a mark before texts that a spreadsheet would take for formulas.</param>
    public static void Write(IEnumerable<OilRow> rows, Stream stream, bool spreadsheetSafe = false)
    {
        rows = [.. rows];
        var used = rows.SelectMany(r => r.Cells.Keys).Concat(rows.Any(r => r.Void is not null) ? [OilColumns.Void] : [])
            .ToHashSet(StringComparer.Ordinal);
        if (used.Count == 0)
        {
            used.UnionWith(OilColumns.Usual);
        }

        string[] columns = [.. OilColumns.All.Where(used.Contains),
            .. used.Except(OilColumns.All, StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        using var writer = TableWriter.Create(stream, spreadsheetSafe);
        writer.WriteComment($" {OilFileReader.Key.Line}");
        TableWriter.Names(writer, columns);
        foreach (var row in rows)
        {
            TableWriter.Row(writer, columns.Select(c => c == OilColumns.Void ? row.Void ?? "" : row.Cells.GetValueOrDefault(c, "")));
        }
    }
}
