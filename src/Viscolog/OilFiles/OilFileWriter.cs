using System.Globalization;
using CsvHelper;

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
        var used = rows.SelectMany(r => r.Cells.Keys).Concat(rows.Any(r => r.Void is not null) ? [OilColumns.Void] : []).ToHashSet(StringComparer.Ordinal);
        string[] columns = [.. OilColumns.All.Where(used.Contains), .. used.Except(OilColumns.All, StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        using var writer = CsvWriter.Create(
            stream,
            CsvWriterOptions.Default with
            {
                Separator = ',',
                NewLine = "\n",
                FormatProvider = CultureInfo.InvariantCulture,
                CommentPrefix = '#',
                Quoting = CsvQuoting.WhenNeededOrWhitespace,
                Injection = spreadsheetSafe ? CsvInjection.Escape : CsvInjection.None,
            },
            leaveOpen: true);
        writer.WriteComment($" {OilFileReader.Key}: {OilFileReader.Version}");
        foreach (var name in columns)
        {
            // The header row tells the separator, so a name may show no other outside quotes.
            writer.WriteField(name, name.Contains(';', StringComparison.Ordinal) ? CsvQuoting.Always : CsvQuoting.WhenNeededOrWhitespace);
        }

        writer.EndRecord();
        foreach (var row in rows)
        {
            foreach (var column in columns)
            {
                writer.WriteField(column == OilColumns.Void ? row.Void ?? "" : row.Cells.GetValueOrDefault(column, ""));
            }

            writer.EndRecord();
        }
    }
}
