using System.Collections.Immutable;
using Viscolog.Core.Charting;
using Viscolog.Tables;
using Viscolog.Text;

namespace Viscolog.TrendFiles;

/// <summary>Reads trend files; docs/file-formats.md describes them.</summary>
internal static class TrendFileReader
{
    private const string Described = $"a trend file: a row of column names such as {TrendColumns.Example}, and a row for each batch";

    /// <summary>Reads the file at the path.</summary>
    /// <param name="path">The file.</param>
    /// <param name="column">The column of the values; null for the one that is meant.</param>
    public static TableOutcome<TrendFile> Read(string path, string? column)
        => TableOutcome<TrendFile>.At(path, "a trend file", (name, bytes) => Parse(name, bytes, column));

    /// <summary>Reads a file's bytes.</summary>
    public static TableOutcome<TrendFile> Parse(string fileName, ReadOnlyMemory<byte> bytes, string? column)
    {
        var findings = new Findings(fileName);
        var file = Parse(bytes, findings, column);
        return TableOutcome<TrendFile>.Of(findings, () => file! with { Warnings = findings.Warnings });
    }

    private static TrendFile? Parse(ReadOnlyMemory<byte> bytes, Findings findings, string? column)
    {
        if (TableLayout.OfFile(bytes, findings, Described, TrendColumns.Example) is not { } layout)
        {
            return null;
        }

        var values = new ValueReader(findings, layout.Numbers);
        var header = TrendHeader.Of(layout.Header, values);
        if (!findings.Well || Rows(layout, values, ref column) is not { } points)
        {
            return null;
        }

        return new(points, column!)
        {
            Name = header.Name,
            Unit = header.Unit ?? TrendColumns.RangeOf(column!).Unit,
            Low = header.Low,
            High = header.High,
        };
    }

    private static ImmutableArray<ChartPoint>? Rows(TableLayout layout, ValueReader values, ref string? column)
    {
        var findings = values.Findings;
        if (Table.Read(layout, findings) is not { } table || Checked(table, findings, ref column) is not { } chosen)
        {
            return null;
        }

        ImmutableArray<ChartPoint> points = [.. table.Rows.Select(r => Point(r, chosen, values)).OfType<ChartPoint>()];
        if (points.IsEmpty)
        {
            findings.Refuse(new(null, null, "no values"), "a row for each batch");
        }

        return findings.Well ? points : null;
    }

    /// <summary>The column of the values; null where the file is refused.</summary>
    private static string? Checked(Table table, Findings findings, ref string? column)
    {
        if (!table.Has(TrendColumns.Batch))
        {
            findings.Refuse(table.Head, $"a header row with the column batch and a column of values, such as {TrendColumns.Example}");
        }

        column ??= TrendColumns.Choose(table.Names);
        if (column is null || !table.Has(column))
        {
            findings.Refuse(
                table.Head,
                column is null ? "a column of values besides batch" : $"a column '{TerminalText.Of(column)}', which the call asks for");
            return null;
        }

        foreach (var name in table.Names)
        {
            if (!name.Equals(column, StringComparison.OrdinalIgnoreCase)
                && !TrendColumns.Others.Contains(name, StringComparer.OrdinalIgnoreCase))
            {
                findings.Warn(
                    table.Line, $"column '{TerminalText.Of(name)}' is not used; --column charts it instead of '{TerminalText.Of(column)}'");
            }
        }

        return findings.Well ? column : null;
    }

    private static ChartPoint? Point(TableRow row, string column, ValueReader values)
    {
        var (batch, value, voided) = (row.Text(TrendColumns.Batch), row.Text(column), row.Text(TrendColumns.Void));
        if (batch.Length == 0)
        {
            values.Findings.Refuse(row.At(TrendColumns.Batch), "the batch's name or number; fill the row in or delete it");
        }
        else if (voided.Length > 0)
        {
            values.Findings.Warn(row.Line, $"batch {TerminalText.Of(batch)} is void and not charted: {TerminalText.Of(voided)}");
        }
        else if (value.Length == 0)
        {
            values.Findings.Refuse(row.At(column), "the batch's value; fill the row in or delete it");
        }
        else if (values.Number(row.At(column), value, TrendColumns.RangeOf(column)) is { } number)
        {
            return new(OneLine.Of(batch), number);
        }

        return null;
    }
}

/// <summary>Values of batches as a file holds them.</summary>
/// <param name="Points">In the order read.</param>
/// <param name="Column">The column of the values.</param>
internal sealed record TrendFile(ImmutableArray<ChartPoint> Points, string Column)
{
    /// <summary>What the batches are of.</summary>
    public string? Name { get; init; }

    /// <summary>The values' unit; empty where none is known.</summary>
    public string Unit { get; init; } = "";

    /// <summary>The least value wanted.</summary>
    public double? Low { get; init; }

    /// <summary>The highest value accepted.</summary>
    public double? High { get; init; }

    /// <summary>What the reader ought to know, a line each.</summary>
    public ImmutableArray<string> Warnings { get; init; } = [];

    /// <summary>The scale where none is asked for: logarithms, but a pH is one already, and 0 and less have none.</summary>
    public ChartScale UsualScale
        => Column.Equals(TrendColumns.Ph, StringComparison.OrdinalIgnoreCase) || Points.Any(p => p.Value <= 0)
            ? ChartScale.Linear : ChartScale.Log;
}
