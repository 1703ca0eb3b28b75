using System.Collections.Immutable;
using Viscolog.Core.Checking;
using Viscolog.RunFiles;
using Viscolog.Text;

namespace Viscolog.TrendFiles;

/// <summary>Reads trend files; docs/file-formats.md describes them.</summary>
internal static class TrendFileReader
{
    private const string Described = $"a trend file: a row of column names such as {TrendColumns.Example}, and a row for each batch";

    /// <summary>Reads the file at the path.</summary>
    /// <param name="path">The file.</param>
    /// <param name="column">The column of the values; null for the one that is meant.</param>
    public static TrendFileOutcome Read(string path, string? column)
    {
        try
        {
            return Directory.Exists(path)
                ? Refused(path, "a folder", "a trend file; name one of the files in it")
                : File.Exists(path) ? Parse(path, File.ReadAllBytes(path), column) : Refused(path, "no such file", "a trend file; check the path");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Refused(path, $"nothing ({e.Message})", "a file that may be read; check its permissions");
        }
    }

    /// <summary>Reads a file's bytes.</summary>
    public static TrendFileOutcome Parse(string fileName, ReadOnlyMemory<byte> bytes, string? column)
    {
        var findings = new Findings(fileName);
        var file = Parse(bytes, findings, column);
        return findings.Refusal is { } refusal ? new TrendFileOutcome.Refused(refusal) : new TrendFileOutcome.Read(file! with { Warnings = findings.Warnings });
    }

    private static TrendFile? Parse(ReadOnlyMemory<byte> bytes, Findings findings, string? column)
    {
        if (RunFileReader.CheckedText(bytes, findings, Described) is not { } text || RunFileLayout.Of(text, findings, TrendColumns.Example) is not { } layout)
        {
            return null;
        }

        var values = new ValueReader(findings, new(layout.Separator));
        var header = TrendHeader.Of(layout.Header, values);
        if (!findings.Well || Rows(layout, values, ref column) is not { } points)
        {
            return null;
        }

        return new(points, column!) { Name = header.Name, Unit = header.Unit ?? TrendColumns.RangeOf(column!).Unit, Low = header.Low, High = header.High };
    }

    private static ImmutableArray<ChartPoint>? Rows(RunFileLayout layout, ValueReader values, ref string? column)
    {
        var findings = values.Findings;
        if (PlainTable.Read(layout, findings) is not { } table || Checked(table, findings, ref column) is not { } chosen)
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
    private static string? Checked(PlainTable table, Findings findings, ref string? column)
    {
        bool Has(string name) => table.Names.Contains(name, StringComparer.OrdinalIgnoreCase);
        if (!Has(TrendColumns.Batch))
        {
            findings.Refuse(table.Head, $"a header row with the column batch and a column of values, such as {TrendColumns.Example}");
        }

        column ??= TrendColumns.Choose(table.Names);
        if (column is null || !Has(column))
        {
            findings.Refuse(table.Head, column is null ? "a column of values beside batch" : $"a column '{OneLine.Of(column)}', which the call asks for");
            return null;
        }

        foreach (var name in table.Names)
        {
            if (!name.Equals(column, StringComparison.OrdinalIgnoreCase) && !TrendColumns.Others.Contains(name, StringComparer.OrdinalIgnoreCase))
            {
                findings.Warn(table.Line, $"column '{OneLine.Of(name)}' is not used; --column charts it instead of '{OneLine.Of(column)}'");
            }
        }

        return findings.Well ? column : null;
    }

    private static ChartPoint? Point(PlainRow row, string column, ValueReader values)
    {
        var (batch, value, voided) = (row.Text(TrendColumns.Batch), row.Text(column), row.Text(TrendColumns.Void));
        if (batch.Length == 0)
        {
            values.Findings.Refuse(row.At(TrendColumns.Batch), "the batch's name or number; fill the row in or delete it");
        }
        else if (voided.Length > 0)
        {
            values.Findings.Warn(row.Line, $"batch {OneLine.Of(batch)} is void and not charted: {OneLine.Of(voided)}");
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

    private static TrendFileOutcome.Refused Refused(string path, string read, string expected) => new(new Refusal(path, null, null, read, expected));
}
