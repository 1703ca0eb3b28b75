using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Unicode;
using CsvHelper;
using Viscolog.Core.Flow;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;
using Viscolog.Text;

namespace Viscolog.FlowFiles;

/// <summary>Reads flow files; docs/file-formats.md describes them.</summary>
internal static class FlowFileReader
{
    /// <summary>Reads the file at the path.</summary>
    public static FlowFileOutcome Read(string path)
    {
        try
        {
            return Directory.Exists(path)
                ? Refused(path, "a folder", "a flow file")
                : File.Exists(path) ? Parse(path, File.ReadAllBytes(path)) : Refused(path, "no such file", "a flow file; check the path");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Refused(path, $"nothing ({e.Message})", "a file that may be read; check its permissions");
        }
    }

    /// <summary>Reads a file's bytes.</summary>
    public static FlowFileOutcome Parse(string fileName, ReadOnlyMemory<byte> bytes)
    {
        var findings = new Findings(fileName);
        var file = Parse(bytes, findings);
        return findings.Refusal is { } refusal
            ? new FlowFileOutcome.Refused(refusal)
            : new FlowFileOutcome.Read(file! with { Warnings = [.. findings.Warnings, .. file.Warnings] });
    }

    private static FlowFile? Parse(ReadOnlyMemory<byte> bytes, Findings findings)
    {
        var text = bytes.Span.StartsWith(Encoding.UTF8.Preamble) ? bytes[Encoding.UTF8.Preamble.Length..] : bytes;
        if (text.IsEmpty || !Utf8.IsValid(text.Span) || text.Span.Contains((byte)0))
        {
            findings.Refuse(new(null, null, text.IsEmpty ? "an empty file" : "bytes that are no text"), $"a flow file in UTF-8: a row of column names such as {FlowColumns.Example}, and a row for each point");
            return null;
        }

        if (RunFileLayout.Of(text, findings) is not { } layout)
        {
            return null;
        }

        var values = new ValueReader(findings, new(layout.Separator));
        var header = FlowHeader.Of(layout.Header, values);
        var rows = findings.Well ? Rows(layout, values) : [];
        return findings.Well ? Made(header, rows, findings) : null;
    }

    private static List<Dictionary<string, double>> Rows(RunFileLayout layout, ValueReader values)
    {
        var findings = values.Findings;
        using var reader = CsvReader.Create(layout.Table, CsvReaderOptions.Default with
        {
            Separator = layout.Separator,
            FormatProvider = CultureInfo.InvariantCulture,
            TrackLineNumbers = true,
            TrimWhitespace = true,
            OnMalformedRecord = r => findings.Refuse(new(layout.TableLine - 1 + (int)r.LineNumber, null, OneLine.Quoted(r.RawRecord)), "quotes around whole cells only"),
        });
        reader.ReadHeader();
        List<string> names = [];
        foreach (var name in reader.Headers)
        {
            names.Add(name.Trim());
        }

        CheckNames(names, layout.TableLine, findings);
        var rows = new List<Dictionary<string, double>>();
        while (findings.Well && reader.Read() && findings.Well)
        {
            var line = layout.TableLine - 1 + (int)reader.LineNumber;
            var row = new Dictionary<string, double>(StringComparer.OrdinalIgnoreCase);
            if (reader.FieldCount > names.Count)
            {
                findings.Refuse(new(line, null, FormattableString.Invariant($"{reader.FieldCount} fields")), FormattableString.Invariant($"at most {names.Count}, as many as the header row names"));
            }

            for (var i = 0; i < Math.Min(names.Count, reader.FieldCount); i++)
            {
                var cell = reader.GetString(i);
                if (FlowColumns.All.TryGetValue(names[i], out var range) && !string.IsNullOrWhiteSpace(cell)
                    && values.Number(new(line, names[i], OneLine.Quoted(cell)), cell, range) is { } number)
                {
                    row[names[i]] = number;
                }
            }

            CheckRow(row, line, findings);
            if (row.Count > 0)
            {
                rows.Add(row);
            }
        }

        return rows;
    }

    private static void CheckNames(List<string> names, int line, Findings findings)
    {
        bool Has(string name) => names.Contains(name, StringComparer.OrdinalIgnoreCase);
        string[] values = [.. new[] { FlowColumns.Stress, FlowColumns.PascalSeconds, FlowColumns.MilliPascalSeconds }.Where(Has)];
        var isSeries = Has(FlowColumns.Speed) && Has(FlowColumns.Torque);
        if (names.Count != names.Distinct(StringComparer.OrdinalIgnoreCase).Count())
        {
            findings.Refuse(new(line, null, OneLine.Quoted(string.Join(',', names))), "each column once");
        }
        else if (isSeries == (Has(FlowColumns.Rate) && values.Length == 1))
        {
            findings.Refuse(
                new(line, null, OneLine.Quoted(string.Join(',', names))),
                "shear_rate_1_s with one of stress_pa, viscosity_pas and viscosity_mpas; or rpm with torque_pct");
        }

        foreach (var name in names.Where(n => !FlowColumns.All.ContainsKey(n)))
        {
            if (UnitWords.Meant(name, FlowColumns.All.Keys) is { Count: > 0 } meant)
            {
                findings.Refuse(new(line, name, OneLine.Quoted(name)), $"{string.Join(" or ", meant.Order(StringComparer.Ordinal))}: give it in that unit");
            }

            findings.Warn(line, $"column '{OneLine.Of(name)}' is unknown; it is not used");
        }
    }

    private static void CheckRow(Dictionary<string, double> row, int line, Findings findings)
    {
        if (row.Count == 1)
        {
            findings.Refuse(new(line, null, "half a point"), "both numbers of a point; fill the row in or delete it");
        }
    }

    private static FlowFile? Made(FlowHeader header, List<Dictionary<string, double>> rows, Findings findings)
    {
        if (rows.Count < FlowCurve.FewestPoints)
        {
            findings.Refuse(new(null, null, FormattableString.Invariant($"{rows.Count} points")), FormattableString.Invariant($"{FlowCurve.FewestPoints} or more: a curve needs them"));
            return null;
        }

        if (!rows[0].ContainsKey(FlowColumns.Speed))
        {
            return new([.. rows.Select(Point)]) { Name = header.Name };
        }

        if (header.Series() is not var (geometry, fullScale))
        {
            return null;
        }

        ImmutableArray<TorqueReading> readings = [.. rows.Select(r => new TorqueReading(r[FlowColumns.Speed], Percentage.FromPercent(r[FlowColumns.Torque])))];
        var series = new TorqueSeries(geometry, fullScale, readings);
        return new(series.ToPoints()) { Name = header.Name, Source = geometry.Source, Warnings = series.Warnings };
    }

    private static FlowPoint Point(Dictionary<string, double> row)
    {
        var rate = row[FlowColumns.Rate];
        var stress = row.TryGetValue(FlowColumns.Stress, out var pascals) ? pascals
            : row.TryGetValue(FlowColumns.PascalSeconds, out var read) || row.TryGetValue(FlowColumns.MilliPascalSeconds, out read) ? read * rate / 1000 : 0;
        return new(ShearRate.FromPerSecond(rate), Stress.FromPascals(stress));
    }

    private static FlowFileOutcome.Refused Refused(string path, string read, string expected) => new(new Refusal(path, null, null, read, expected));
}
