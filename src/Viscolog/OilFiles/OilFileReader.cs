using System.Collections.Immutable;
using Viscolog.Tables;

namespace Viscolog.OilFiles;

/// <summary>Reads oils files; docs/file-formats.md describes them.</summary>
internal static class OilFileReader
{
    /// <summary>The header line that tells an oils file.</summary>
    public static readonly FileKey Key = new("viscolog-oils", "1");

    private const string NamesExample = "'date,method,oil,certified_mpas,certified_temp_c,viscosity_mpas,temp_c'";

    private static readonly string Described =
        $"an oils file: a line '# {Key.Line}', a row of column names such as {NamesExample}, and a row for each reading of a certified oil";

    /// <summary>Reads a file's bytes.</summary>
    /// <param name="fileName">How refusals and warnings name it.</param>
    /// <param name="bytes">All of it.</param>
    public static TableOutcome<OilFile> Parse(string fileName, ReadOnlyMemory<byte> bytes)
    {
        var findings = new Findings(fileName);
        var rows = Rows(bytes, findings);
        return TableOutcome<OilFile>.Of(findings, () => new(rows, findings.Warnings));
    }

    private static ImmutableArray<OilRow> Rows(ReadOnlyMemory<byte> bytes, Findings findings)
    {
        if (TableLayout.OfFile(bytes, findings, Described, NamesExample) is not { } layout)
        {
            return [];
        }

        Key.Check(layout, findings);
        if (!findings.Well || Table.Read(layout, findings) is not { } table)
        {
            return [];
        }

        table.CheckUnknown(OilColumns.All, findings, "kept, not used");
        var values = new ValueReader(findings, layout.Numbers);
        return [.. table.Rows.Select(r => OilCells.Read(r.Cells.Select(c => KeyValuePair.Create(c.Key, c.Value.Trim())), values, r.At))
            .OfType<OilRow>()];
    }
}

/// <summary>Readings of certified oils as a file holds them.</summary>
/// <param name="Rows">The readings, in the order read.</param>
/// <param name="Warnings">What the reader ought to know, a line each.</param>
internal sealed record OilFile(ImmutableArray<OilRow> Rows, ImmutableArray<string> Warnings);
