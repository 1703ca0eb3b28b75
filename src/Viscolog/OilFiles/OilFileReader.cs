using System.Collections.Immutable;
using Viscolog.RunFiles;
using Viscolog.Text;

namespace Viscolog.OilFiles;

/// <summary>Reads oils files; docs/file-formats.md describes them.</summary>
internal static class OilFileReader
{
    /// <summary>The header key that tells an oils file.</summary>
    public const string Key = "viscolog-oils";

    /// <summary>The version of the format.</summary>
    public const string Version = "1";

    private const string NamesExample = "'date,method,oil,certified_mpas,certified_temp_c,viscosity_mpas,temp_c'";

    private const string Described = $"an oils file: a line '# {Key}: {Version}', a row of column names such as {NamesExample}, and a row for each reading of a certified oil";

    /// <summary>Whether these are the first bytes of an oils file.</summary>
    public static bool IsOils(ReadOnlySpan<byte> bytes) => FirstKey.Is(bytes, Key);

    /// <summary>Reads a file's bytes.</summary>
    /// <param name="fileName">How refusals and warnings name it.</param>
    /// <param name="bytes">All of it.</param>
    public static OilFileOutcome Parse(string fileName, ReadOnlyMemory<byte> bytes)
    {
        var findings = new Findings(fileName);
        var rows = Rows(bytes, findings);
        return findings.Refusal is { } refusal ? new OilFileOutcome.Refused(refusal) : new OilFileOutcome.Read(new(rows, findings.Warnings));
    }

    private static ImmutableArray<OilRow> Rows(ReadOnlyMemory<byte> bytes, Findings findings)
    {
        if (RunFileReader.CheckedText(bytes, findings, Described) is not { } text || RunFileLayout.Of(text, findings, NamesExample) is not { } layout)
        {
            return [];
        }

        foreach (var line in layout.Header)
        {
            if (!line.Key.Equals(Key, StringComparison.OrdinalIgnoreCase) || line.Value != Version || line != layout.Header[0])
            {
                findings.Refuse(line.Place, $"the header line '# {Key}: {Version}' alone");
            }
        }

        if (!findings.Well || PlainTable.Read(layout, findings) is not { } table)
        {
            return [];
        }

        foreach (var name in table.Names.Where(n => !OilColumns.All.Contains(n, StringComparer.OrdinalIgnoreCase)))
        {
            if (UnitWords.Meant(name, OilColumns.All) is { Count: > 0 } meant)
            {
                findings.Refuse(new(table.Line, name, OneLine.Quoted(name)), $"{string.Join(" or ", meant)}: give it in that unit");
            }

            findings.Warn(table.Line, $"column '{OneLine.Of(name)}' is unknown; it is kept, not used");
        }

        var values = new ValueReader(findings, new(layout.Separator));
        return [.. table.Rows.Select(r => OilCells.Read(r.Cells, values, r.At)).OfType<OilRow>()];
    }
}
