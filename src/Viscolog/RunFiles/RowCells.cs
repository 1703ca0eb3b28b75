using System.Collections.Immutable;
using CsvHelper;
using Viscolog.Text;

namespace Viscolog.RunFiles;

/// <summary>The cells of the row that a reader stands on.</summary>
internal sealed class RowCells(CsvReader reader, TableColumns columns, ValueReader values, int linesBefore)
{
    /// <summary>The line of the file on which the row begins, from 1.</summary>
    public int Line => linesBefore + (int)reader.LineNumber;

    /// <summary>What was found so far.</summary>
    public Findings Findings => values.Findings;

    /// <summary>Whether the cell holds something.</summary>
    public bool Has(Column column) => !string.IsNullOrWhiteSpace(Raw(columns.PlaceOf(column)));

    /// <summary>The text of a cell as it stands; null where it is blank.</summary>
    public string? Text(Column column)
    {
        var text = Raw(columns.PlaceOf(column));
        return string.IsNullOrWhiteSpace(text) ? null : text;
    }

    /// <summary>The number of a cell; null where it is empty or the file is refused.</summary>
    public double? Number(Column column)
        => Text(column) is { } text ? values.Number(At(column), text, column.Range!) : null;

    /// <summary>Where a cell stands and what it holds.</summary>
    public Place At(Column column) => new(Line, column.Name, OneLine.Quoted(Text(column) ?? ""));

    /// <summary>The texts of the unknown columns.</summary>
    public ImmutableArray<string> Unknown() => [.. columns.Unknown.Select(Raw)];

    /// <summary>Whether every cell is blank.</summary>
    public bool AllBlank()
    {
        for (var i = 0; i < reader.FieldCount; i++)
        {
            if (!string.IsNullOrWhiteSpace(Raw(i)))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether a known column holds something.</summary>
    public bool AnyKnown() => Columns.All.Any(Has);

    private string Raw(int place) => place >= 0 && place < reader.FieldCount ? reader.GetString(place) : "";
}
