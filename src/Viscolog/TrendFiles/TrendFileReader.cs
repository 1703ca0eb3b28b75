using System.Collections.Immutable;
using System.Globalization;
using CsvHelper;
using Viscolog.Core.Checking;
using Viscolog.RunFiles;

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
        var linesBefore = layout.TableLine - 1;
        using var reader = CsvReader.Create(layout.Table, CsvReaderOptions.Default with
        {
            Separator = layout.Separator,
            FormatProvider = CultureInfo.InvariantCulture,
            TrackLineNumbers = true,
            TrimWhitespace = true,
            OnMalformedRecord = r => findings.Refuse(new(linesBefore + (int)r.LineNumber, null, OneLine.Quoted(r.RawRecord)), "quotes around whole cells only"),
        });
        reader.ReadHeader();
        List<string> names = [];
        foreach (var name in reader.Headers)
        {
            names.Add(name.Trim());
        }

        var places = Places(names, layout.TableLine, findings, ref column);
        var points = ImmutableArray.CreateBuilder<ChartPoint>();
        while (findings.Well && reader.Read() && findings.Well)
        {
            var line = linesBefore + (int)reader.LineNumber;
            string Cell(int place) => place >= 0 && place < reader.FieldCount ? reader.GetString(place).Trim() : "";
            if (reader.FieldCount > names.Count)
            {
                findings.Refuse(new(line, null, FormattableString.Invariant($"{reader.FieldCount} fields")), FormattableString.Invariant($"at most {names.Count}, as many as the header row names"));
            }
            else if (Enumerable.Range(0, reader.FieldCount).Any(i => Cell(i).Length > 0) && Point(Cell(places.Batch), Cell(places.Value), Cell(places.Void), line, column!, values) is { } point)
            {
                points.Add(point);
            }
        }

        if (points.Count == 0)
        {
            findings.Refuse(new(null, null, "no values"), "a row for each batch");
        }

        return findings.Well ? points.ToImmutable() : null;
    }

    private static (int Batch, int Value, int Void) Places(List<string> names, int line, Findings findings, ref string? column)
    {
        var row = new Place(line, null, OneLine.Quoted(string.Join(',', names)));
        int PlaceOf(string name) => names.FindIndex(n => n.Equals(name, StringComparison.OrdinalIgnoreCase));
        if (names.Count != names.Distinct(StringComparer.OrdinalIgnoreCase).Count() || names.Contains(""))
        {
            findings.Refuse(row, "each column once, with a name");
        }

        if (PlaceOf(TrendColumns.Batch) < 0)
        {
            findings.Refuse(row, $"a header row with the column batch and a column of values, such as {TrendColumns.Example}");
        }

        column ??= TrendColumns.Choose(names);
        if (column is null || PlaceOf(column) < 0)
        {
            findings.Refuse(row, column is null ? "a column of values beside batch" : $"a column '{OneLine.Of(column)}', which the call asks for");
            return default;
        }

        foreach (var name in names)
        {
            if (!name.Equals(column, StringComparison.OrdinalIgnoreCase) && !TrendColumns.Others.Contains(name, StringComparer.OrdinalIgnoreCase))
            {
                findings.Warn(line, $"column '{OneLine.Of(name)}' is not used; --column charts it instead of '{OneLine.Of(column)}'");
            }
        }

        return (PlaceOf(TrendColumns.Batch), PlaceOf(column), PlaceOf(TrendColumns.Void));
    }

    private static ChartPoint? Point(string batch, string value, string voided, int line, string column, ValueReader values)
    {
        if (batch.Length == 0)
        {
            values.Findings.Refuse(new(line, TrendColumns.Batch, "nothing"), "the batch's name or number; fill the row in or delete it");
            return null;
        }

        if (value.Length == 0 && voided.Length == 0)
        {
            values.Findings.Refuse(new(line, column, "nothing"), "the batch's value; fill the row in or delete it");
            return null;
        }

        if (voided.Length > 0)
        {
            values.Findings.Warn(line, $"batch {OneLine.Of(batch)} is void and not charted: {OneLine.Of(voided)}");
            return null;
        }

        return values.Number(new(line, column, OneLine.Quoted(value)), value, TrendColumns.RangeOf(column)) is { } number ? new(OneLine.Of(batch), number) : null;
    }

    private static TrendFileOutcome.Refused Refused(string path, string read, string expected) => new(new Refusal(path, null, null, read, expected));
}
