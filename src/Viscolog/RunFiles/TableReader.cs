using System.Globalization;
using System.Text;
using CsvHelper;
using Viscolog.Text;

namespace Viscolog.RunFiles;

/// <summary>Reads the table of a run file.</summary>
internal sealed class TableReader(RunFileLayout layout, ValueReader values)
{
    private readonly RowBuilder _rows = new();
    private readonly LooseTimes _loose = new();

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
        var cells = new RowCells(reader, columns, values, LinesBefore);
        var rows = new RowReader(file.Run);
        while (Findings.Well && reader.Read() && Findings.Well)
        {
            Take(reader, cells, columns, rows);
        }

        _loose.Warn(Findings);
        return !Findings.Well ? null : _rows.Onto(file) with { UnknownColumns = columns.UnknownNames };
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

    private void Take(CsvReader reader, RowCells cells, TableColumns columns, RowReader rows)
    {
        if (cells.AllBlank())
        {
            return;
        }

        if (!Fits(reader, cells, columns) || rows.Read(cells) is not { } content)
        {
            return;
        }

        _loose.Note(cells, content);
        if (_rows.Add(new(content, cells.Unknown())) == 0 && cells.AnyKnown())
        {
            var at = new Place(cells.Line, null, RowAppender.NothingRead);
            Findings.Refuse(at, RowAppender.NothingExpected);
        }
    }

    private bool Fits(CsvReader reader, RowCells cells, TableColumns columns)
    {
        if (reader.RawRecord.TrimStart(" \t"u8).StartsWith("#"u8))
        {
            Findings.Refuse(new(cells.Line, null, OneLine.Quoted(Encoding.UTF8.GetString(reader.RawRecord))), "a row of the table: header lines stand before the column names");
        }
        else if (reader.FieldCount > columns.Names.Count)
        {
            var read = FormattableString.Invariant($"{reader.FieldCount} fields");
            Findings.Refuse(new(cells.Line, null, read), FormattableString.Invariant($"at most {columns.Names.Count}, as many as the header row names; a text that holds the separator goes into quotes"));
        }

        return Findings.Well;
    }
}
