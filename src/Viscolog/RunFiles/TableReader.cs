using System.Text;
using CsvHelper;
using Viscolog.Output;
using Viscolog.Tables;
using Viscolog.Text;

namespace Viscolog.RunFiles;

/// <summary>Reads the table of a run file.</summary>
internal sealed class TableReader(TableLayout layout, ValueReader values)
{
    private Findings Findings => values.Findings;

    /// <summary>The file with its rows; null where it is refused.</summary>
    public RunFile? Read(RunFile file) => Read(file, file.With);

    /// <summary>The file without its rows, which are packed; null where it is refused.</summary>
    public RunFile? Read(RunFile file, PackedRows packed) => Read(file, rows =>
    {
        foreach (var row in Streamed.InOrder(rows, RowJson.Bytes))
        {
            packed.Add(row);
        }

        return file;
    });

    private RunFile? Read(RunFile file, Func<IEnumerable<FileRow>, RunFile> take)
    {
        using var reader = layout.Reader(RefuseQuotes);
        var names = TableLayout.NamesOf(reader);
        if (!Findings.Well)
        {
            return null;
        }

        var columns = TableColumns.Of(names, layout.TableLine, Findings);
        RowLength.Check(
            [
                .. layout.Header.Select(l => (l.Line, (string?)null, l.Key + l.Value)),
                .. columns.UnknownNames.Select(n => (layout.TableLine, (string?)n, n)),
            ],
            "header lines and names of columns",
            Findings);
        var rows = new RowReader(reader, columns, values, layout, file.Run);
        var read = take(Rows(reader, rows, columns.Names.Count)) with { UnknownColumns = columns.UnknownNames };
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

    private void RefuseQuotes(CsvMalformedRecord record)
    {
        var expected = record.Reason == CsvMalformedReason.UnterminatedQuote
            ? "a closing quote: the cell that a quote opens here never ends"
            : "quotes around the whole cell, and each quote inside it doubled";
        Findings.Refuse(new(layout.LineOf(record.LineNumber), null, OneLine.Quoted(record.RawRecord)), expected);
    }

    private bool Fits(CsvReader reader, int line, int columns)
    {
        if (reader.RawRecord.TrimStart(" \t"u8).StartsWith("#"u8))
        {
            Findings.Refuse(
                new(line, null, OneLine.Quoted(Encoding.UTF8.GetString(reader.RawRecord))),
                "a row of the table: header lines stand before the column names");
        }
        else if (TableLayout.FieldsOf(reader, columns) is var fields && fields > columns)
        {
            var read = FormattableString.Invariant($"{fields} fields");
            Findings.Refuse(
                new(line, null, read),
                FormattableString.Invariant($"at most {columns}, as many as the header row names; ")
                    + "a text that contains the separator goes in quotes");
        }

        return Findings.Well;
    }
}
