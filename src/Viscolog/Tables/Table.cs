using System.Collections.Immutable;
using CsvHelper;
using Viscolog.Text;

namespace Viscolog.Tables;

/// <summary>The table of a file as texts: names of columns, and rows in which something stands.</summary>
/// <param name="Names">The names as they stand in the header row; each once.</param>
/// <param name="Line">The line of the header row.</param>
/// <param name="Rows">The rows.</param>
internal sealed record Table(ImmutableArray<string> Names, int Line, ImmutableArray<TableRow> Rows)
{
    /// <summary>The header row, where it is to blame.</summary>
    public Place Head => new(Line, null, OneLine.Quoted(string.Join(',', Names)));

    /// <summary>Whether there is a column of that name; capitals make no difference.</summary>
    public bool Has(string name) => Names.Contains(name, StringComparer.OrdinalIgnoreCase);

    /// <summary>Reads a table; null where the file is refused.</summary>
    /// <param name="layout">The file.</param>
    /// <param name="findings">What was found so far.</param>
    /// <param name="words">What this kind of file says of quotes and fields; null for the usual.</param>
    /// <param name="check">Checks the names before the rows are read; null to want each column once, with a name.</param>
    public static Table? Read(TableLayout layout, Findings findings, TableWords? words = null, Action<Table>? check = null)
    {
        words ??= TableWords.Usual;
        using var reader = layout.Reader(
            r => findings.Refuse(new(layout.LineOf(r.LineNumber), null, OneLine.Quoted(r.RawRecord)), words.Quotes));
        var table = new Table(TableLayout.NamesOf(reader), layout.TableLine, []);
        (check ?? (t => t.CheckNames(findings)))(table);
        var rows = ImmutableArray.CreateBuilder<TableRow>();
        while (findings.Well && reader.Read() && findings.Well)
        {
            var row = TableRow.Of(reader, layout.LineOf(reader.LineNumber), table.Names);
            if (words.Fields is { } remedy && TableLayout.FieldsOf(reader, table.Names.Length) is var fields && fields > table.Names.Length)
            {
                findings.Refuse(
                    new(row.Line, null, FormattableString.Invariant($"{fields} fields")),
                    FormattableString.Invariant($"at most {table.Names.Length}, as many as the header row names{remedy}"));
            }
            else if (!row.Cells.IsEmpty)
            {
                RowLength.Check([.. row.Cells.Select(c => (row.Line, (string?)c.Key, c.Key + c.Value))], "a row", findings);
                rows.Add(row);
            }
        }

        return findings.Well ? table with { Rows = rows.ToImmutable() } : null;
    }

    /// <summary>Refuses columns without a name, or there twice.</summary>
    public void CheckNames(Findings findings)
    {
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var (i, name) in Names.Index())
        {
            if (name.Length == 0 || !seen.Add(name))
            {
                findings.Refuse(
                    new(Line, name.Length == 0 ? FormattableString.Invariant($"{i + 1}") : name, OneLine.Quoted(name)),
                    "each column once, with a name");
            }
        }
    }

    /// <summary>Warns of columns that are not known; refuses those that are a known one in another unit.</summary>
    /// <param name="known">The names that are known.</param>
    /// <param name="findings">What was found so far.</param>
    /// <param name="fate">What becomes of the others.</param>
    public void CheckUnknown(IReadOnlyCollection<string> known, Findings findings, string fate)
    {
        foreach (var name in Names.Where(n => !known.Contains(n, StringComparer.OrdinalIgnoreCase)))
        {
            UnitWords.Refuse(name, known, new(Line, name, OneLine.Quoted(name)), findings);
            findings.Warn(Line, $"column '{TerminalText.Of(name)}' is unknown; it is {fate}");
        }
    }
}

/// <summary>A row as texts.</summary>
/// <param name="Line">The line of the file on which it begins.</param>
/// <param name="Cells">The cells that hold something, as they stand, each with its column; none for what stands beyond the columns.</param>
internal sealed record TableRow(int Line, ImmutableArray<KeyValuePair<string, string>> Cells)
{
    /// <summary>The row that a reader stands on.</summary>
    public static TableRow Of(CsvReader reader, int line, ImmutableArray<string> names)
    {
        var cells = ImmutableArray.CreateBuilder<KeyValuePair<string, string>>();
        for (var i = 0; i < reader.FieldCount; i++)
        {
            if (reader.GetString(i) is var cell && !string.IsNullOrWhiteSpace(cell))
            {
                cells.Add(new(i < names.Length ? names[i] : "", cell));
            }
        }

        return new(line, cells.ToImmutable());
    }

    /// <summary>The text of a cell without space around it; empty where there is none.</summary>
    public string Text(string column)
        => Cells.FirstOrDefault(c => c.Key.Equals(column, StringComparison.OrdinalIgnoreCase)).Value?.Trim() ?? "";

    /// <summary>Where a cell stands and what it holds; the row as a whole without a column.</summary>
    public Place At(string? column)
        => new(Line, column, OneLine.Quoted(column is null ? string.Join(',', Cells.Select(c => c.Value)) : Text(column)));
}

/// <summary>What a kind of file says of its table where it refuses it.</summary>
/// <param name="Quotes">What is expected of quotes.</param>
/// <param name="Fields">What is added to how many fields a row has at most; null where empty fields beyond them are no fault.</param>
internal sealed record TableWords(string Quotes, string? Fields)
{
    /// <summary>What most say.</summary>
    public static TableWords Usual { get; } = new(
        "quotes around the whole cell, closed, and each quote inside it doubled", "; a text that contains the separator goes in quotes");
}
