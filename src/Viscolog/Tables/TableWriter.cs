using System.Globalization;
using CsvHelper;

namespace Viscolog.Tables;

/// <summary>Writes tables: UTF-8 without byte order mark, LF, commas, decimal points.</summary>
internal static class TableWriter
{
    /// <summary>A writer; the stream stays open.</summary>
    /// <param name="stream">Where to.</param>
    /// <param name="spreadsheetSafe">Whether to put a mark before texts that a spreadsheet would take for formulas.</param>
    /// <param name="hasHeader">Whether header lines stand before the table: then a first cell that begins like one is quoted.</param>
    public static CsvWriter Create(Stream stream, bool spreadsheetSafe, bool hasHeader = true)
        => CsvWriter.Create(
            stream,
            CsvWriterOptions.Default with
            {
                Separator = ',',
                NewLine = "\n",
                FormatProvider = CultureInfo.InvariantCulture,
                CommentPrefix = hasHeader ? '#' : CsvWriterOptions.Default.CommentPrefix,
                // A header line that needs quotes is a record of one field.
                ValidateFieldCount = !hasHeader,
                // Readers trim space at a cell's ends.
                Quoting = CsvQuoting.WhenNeededOrWhitespace,
                // What is read back by this program must not have marks before its texts.
                Injection = spreadsheetSafe ? CsvInjection.Escape : CsvInjection.None,
            },
            leaveOpen: true);

    /// <summary>Writes the header row.</summary>
    public static void Names(CsvWriter writer, IEnumerable<string> names)
    {
        foreach (var name in names)
        {
            // The header row tells the separator, so a name may show no other outside quotes.
            writer.WriteField(name, name.Contains(';', StringComparison.Ordinal) ? CsvQuoting.Always : CsvQuoting.WhenNeededOrWhitespace);
        }

        writer.EndRecord();
    }

    /// <summary>Writes a row.</summary>
    public static void Row(CsvWriter writer, IEnumerable<string> cells)
    {
        foreach (var cell in cells)
        {
            writer.WriteField(cell);
        }

        writer.EndRecord();
    }
}
