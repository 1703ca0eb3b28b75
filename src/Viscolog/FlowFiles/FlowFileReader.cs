using System.Collections.Immutable;
using Viscolog.Core.Flow;
using Viscolog.Core.Quantities;
using Viscolog.Tables;
using Viscolog.Wording;

namespace Viscolog.FlowFiles;

/// <summary>Reads flow files; docs/file-formats.md describes them.</summary>
internal static class FlowFileReader
{
    private const string Described = $"a flow file: a row of column names such as {FlowColumns.Example}, and a row for each point";

    /// <summary>Reads the file at the path.</summary>
    public static TableOutcome<FlowFile> Read(string path) => TableOutcome<FlowFile>.At(path, "a flow file", Parse);

    /// <summary>Reads a file's bytes.</summary>
    public static TableOutcome<FlowFile> Parse(string fileName, ReadOnlyMemory<byte> bytes)
    {
        var findings = new Findings(fileName);
        var file = Parse(bytes, findings);
        return TableOutcome<FlowFile>.Of(findings, () => file! with { Warnings = [.. findings.Warnings, .. file.Warnings] });
    }

    private static FlowFile? Parse(ReadOnlyMemory<byte> bytes, Findings findings)
    {
        if (TableLayout.OfFile(bytes, findings, Described, FlowColumns.Example) is not { } layout)
        {
            return null;
        }

        var values = new ValueReader(findings, layout.Numbers);
        var header = FlowHeader.Of(layout.Header, values);
        var rows = findings.Well ? Rows(layout, values) : [];
        return findings.Well ? Made(header, rows, findings) : null;
    }

    private static List<Dictionary<string, double>> Rows(TableLayout layout, ValueReader values)
    {
        var findings = values.Findings;
        return Table.Read(layout, findings, new("quotes around whole cells only", ""), t => CheckNames(t, findings)) is { } table
            ? [.. table.Rows.TakeWhile(_ => findings.Well).Select(r => Numbers(r, values)).Where(r => r.Count > 0)]
            : [];
    }

    private static Dictionary<string, double> Numbers(TableRow row, ValueReader values)
    {
        var numbers = new Dictionary<string, double>(StringComparer.OrdinalIgnoreCase);
        foreach (var (name, text) in row.Cells)
        {
            if (FlowColumns.All.TryGetValue(name, out var range) && values.Number(row.At(name), text, range) is { } number)
            {
                numbers[name] = number;
            }
        }

        if (numbers.Count == 1)
        {
            values.Findings.Refuse(new(row.Line, null, "half a point"), "both numbers of a point; fill the row in or delete it");
        }

        return numbers;
    }

    private static void CheckNames(Table table, Findings findings)
    {
        var values = new[] { FlowColumns.Stress, FlowColumns.PascalSeconds, FlowColumns.MilliPascalSeconds }.Count(table.Has);
        var isSeries = table.Has(FlowColumns.Speed) && table.Has(FlowColumns.Torque);
        if (table.Names.Length != table.Names.Distinct(StringComparer.OrdinalIgnoreCase).Count())
        {
            findings.Refuse(table.Head, "each column once");
        }
        else if (isSeries == (table.Has(FlowColumns.Rate) && values == 1))
        {
            findings.Refuse(table.Head, "shear_rate_1_s with one of stress_pa, viscosity_pas and viscosity_mpas; or rpm with torque_pct");
        }

        table.CheckUnknown([.. FlowColumns.All.Keys], findings, "not used");
    }

    private static FlowFile? Made(FlowHeader header, List<Dictionary<string, double>> rows, Findings findings)
    {
        if (rows.Count < FlowCurve.FewestPoints)
        {
            findings.Refuse(new(null, null, FormattableString.Invariant($"{rows.Count} points")),
                FormattableString.Invariant($"{FlowCurve.FewestPoints} or more: a curve needs them"));
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

        ImmutableArray<TorqueReading> readings = [.. rows.Select(r
            => new TorqueReading(r[FlowColumns.Speed], Percentage.FromPercent(r[FlowColumns.Torque])))];
        var series = new TorqueSeries(geometry, fullScale, readings);
        return new(series.ToPoints())
        {
            Name = header.Name,
            Series = series,
            Source = FlowWords.Source(geometry),
            Warnings = [.. series.Warnings.Select(FlowWords.Of)],
        };
    }

    private static FlowPoint Point(Dictionary<string, double> row)
    {
        var rate = row[FlowColumns.Rate];
        var stress = row.TryGetValue(FlowColumns.Stress, out var pascals) ? pascals
            : row.TryGetValue(FlowColumns.PascalSeconds, out var read) || row.TryGetValue(FlowColumns.MilliPascalSeconds, out read)
                ? read * rate / 1000 : 0;
        return new(ShearRate.FromPerSecond(rate), Stress.FromPascals(stress));
    }
}

/// <summary>A flow curve as a file holds it.</summary>
/// <param name="Points">Rates and stresses, in the order read.</param>
internal sealed record FlowFile(ImmutableArray<FlowPoint> Points)
{
    /// <summary>The sample's name.</summary>
    public string? Name { get; init; }

    /// <summary>Speeds and torques where the file holds those.</summary>
    public TorqueSeries? Series { get; init; }

    /// <summary>Where the rates come from where they were worked out of speeds and torques.</summary>
    public string? Source { get; init; }

    /// <summary>What the reader ought to know, a line each.</summary>
    public ImmutableArray<string> Warnings { get; init; } = [];
}
