using System.Globalization;
using System.Text;
using CsvHelper;
using Viscolog.Text;

namespace Viscolog.RunFiles;

/// <summary>Reads the table of a run file.</summary>
internal sealed class TableReader(RunFileLayout layout, ValueReader values)
{
    private Findings Findings => values.Findings;

    private int LinesBefore => layout.TableLine - 1;

    /// <summary>The file with its rows; null where it is refused.</summary>
    public RunFile? Read(RunFile file)
    {
        using var reader = CsvReader.Create(layout.Table, Options());
        reader.ReadHeader();
        if (!Findings.Well)
        {
            return null;
        }

        var columns = TableColumns.Of(Names(reader), layout.TableLine, Findings);
        var rows = new RowReader(reader, columns, values, LinesBefore, file.Run);
        var read = file.With(Rows(reader, rows, columns.Names.Count)) with { UnknownColumns = columns.UnknownNames };
        rows.WarnOfLooseTimes();
        return Findings.Well ? read : null;
    }

    private IEnumerable<FileRow> Rows(CsvReader reader, RowReader rows, int columns)
    {
        while (Findings.Well && reader.Read() && Findings.Well)
        {
            if (!rows.IsBlank() && Fits(reader, rows.Line, columns) && rows.Read() is { } row)
            {
                yield return row;
            }
        }
    }

    private static List<string> Names(CsvReader reader)
    {
        var names = new List<string>();
        foreach (var name in reader.Headers)
        {
            names.Add(name.Trim());
        }

        return names;
    }

    private CsvReaderOptions Options() => CsvReaderOptions.Default with
    {
        Separator = layout.Separator,
        FormatProvider = CultureInfo.InvariantCulture,
        TrackLineNumbers = true,
        TrimWhitespace = true,
        OnMalformedRecord = RefuseQuotes,
    };

    private void RefuseQuotes(CsvMalformedRecord record)
    {
        var expected = record.Reason == CsvMalformedReason.UnterminatedQuote
            ? "a closing quote: the cell that a quote opens here never ends"
            : "quotes around the whole cell, and each quote inside it doubled";
        Findings.Refuse(new(LinesBefore + (int)record.LineNumber, null, OneLine.Quoted(record.RawRecord)), expected);
    }

    private bool Fits(CsvReader reader, int line, int columns)
    {
        if (reader.RawRecord.TrimStart(" \t"u8).StartsWith("#"u8))
        {
            Findings.Refuse(
                new(line, null, OneLine.Quoted(Encoding.UTF8.GetString(reader.RawRecord))), "a row of the table: header lines stand before the column names");
        }
        else if (reader.FieldCount > columns)
        {
            var read = FormattableString.Invariant($"{reader.FieldCount} fields");
            Findings.Refuse(
                new(line, null, read),
                FormattableString.Invariant($"at most {columns}, as many as the header row names; a text that holds the separator goes into quotes"));
        }

        return Findings.Well;
    }
}
