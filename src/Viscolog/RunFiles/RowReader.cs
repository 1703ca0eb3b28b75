using CsvHelper;
using Viscolog.Core.Pots;
using Viscolog.Tables;
using Viscolog.Text;

namespace Viscolog.RunFiles;

/// <summary>Reads rows one after the other and keeps the pot that they make.</summary>
internal sealed class RowReader(CsvReader reader, TableColumns columns, ValueReader values, TableLayout layout, Run run)
{
    private readonly RowAppender _run = new(run);
    private int _firstLoose;
    private int _moreLoose;

    /// <summary>The line of the file on which the row begins, from 1.</summary>
    public int Line => layout.LineOf(reader.LineNumber);

    private Findings Findings => values.Findings;

    /// <summary>The row that the reader stands on; null where the file is refused.</summary>
    public FileRow? Read()
    {
        CheckLength();
        var draft = new RowDraft(run);
        var (isBlank, start) = (true, _run.Pot);
        foreach (var (column, place) in columns.Known)
        {
            if (IsBlank(place))
            {
                continue;
            }

            isBlank = false;
            if (column.Take(draft, Raw(place), values.Numbers) is { } expected)
            {
                return Refuse(new(column, expected));
            }
        }

        if (draft.ToRow(start, out var fault) is not { } row)
        {
            return Refuse(fault!);
        }

        if (_run.Append(row) is { } wrong)
        {
            return Refuse(wrong);
        }

        Note(row, draft);
        return isBlank || row.Entries().Any()
            ? columns.Unknown.IsEmpty ? row : row with { Unknown = [.. columns.Unknown.Select(Raw)] }
            : Refuse(new(null, RowAppender.NothingExpected));
    }

    /// <summary>Whether every cell is blank.</summary>
    public bool IsBlank()
    {
        for (var i = 0; i < reader.FieldCount; i++)
        {
            if (!IsBlank(i))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Warns once for all rows whose stirring or standing time belongs to no reading.</summary>
    public void WarnOfLooseTimes()
    {
        if (_firstLoose > 0)
        {
            var more = _moreLoose == 0 ? "" : FormattableString.Invariant($" (and in {_moreLoose} more)");
            Findings.Warn(_firstLoose, $"stir_s and wait_s of a row without a reading{more} are ignored");
        }
    }

    private void CheckLength()
    {
        // Most rows are far from it.
        if (reader.RawRecord.Length + columns.Names.Count > RowLength.Most / 8)
        {
            RowLength.Check([.. columns.Names.Select((n, i) => (Line, (string?)n, Raw(i)))], "a row", Findings);
        }
    }

    private void Note(FileRow row, RowDraft draft)
    {
        if (row.Reading is null && draft.HasTimes)
        {
            _moreLoose += _firstLoose == 0 ? 0 : 1;
            _firstLoose = _firstLoose == 0 ? Line : _firstLoose;
        }
    }

    private FileRow? Refuse(CellFault fault)
    {
        var read = fault switch
        {
            { Column: null } => RowAppender.NothingRead,
            { Beside: { } beside } => $"nothing besides {beside} {Shown(beside)}",
            { Column.Name: var name } => Shown(name),
        };
        Findings.Refuse(new(Line, fault.Column?.Name, read), fault.Expected);
        return null;
    }

    private string Shown(string column)
        => OneLine.Quoted(columns.Known.FirstOrDefault(c => c.Column.Name == column) is ({ }, var place) ? Raw(place) : "");

    // Most cells of a row are empty, and none of those is made into a text.
    private bool IsBlank(int place)
        => place >= reader.FieldCount || reader.GetRawSpan(place).IsEmpty || string.IsNullOrWhiteSpace(reader.GetString(place));

    private string Raw(int place) => place < reader.FieldCount ? reader.GetString(place) : "";
}
