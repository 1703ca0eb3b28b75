using Viscolog.Tables;

namespace Viscolog.RunFiles;

/// <summary>Reads run files; docs/file-formats.md describes them.</summary>
internal static class RunFileReader
{
    private const string Described = "a run file: header lines '# key: value', a row of column names, and a row for each event";

    /// <summary>Column names to show where they are missing.</summary>
    public const string NamesExample = "'thickener,added_g,stir_s,wait_s,viscosity_mpas'";

    /// <summary>Reads the file at the path.</summary>
    public static TableOutcome<RunFile> Read(string path) => TableOutcome<RunFile>.At(path, "a run file", Parse);

    /// <summary>Reads a file's bytes.</summary>
    /// <param name="fileName">How refusals and warnings name it.</param>
    /// <param name="bytes">All of it.</param>
    public static TableOutcome<RunFile> Parse(string fileName, ReadOnlyMemory<byte> bytes)
    {
        var findings = new Findings(fileName);
        var file = Parse(bytes, findings, (reader, header) => reader.Read(header));
        return TableOutcome<RunFile>.Of(findings, () => file! with { Warnings = findings.Warnings });
    }

    /// <summary>Reads a file's bytes for an import, which has no need of all rows at once.</summary>
    /// <inheritdoc cref="Parse(string, ReadOnlyMemory{byte})"/>
    public static TableOutcome<RunToImport> ParsePacked(string fileName, ReadOnlyMemory<byte> bytes)
    {
        var (findings, packed) = (new Findings(fileName), new PackedRows());
        var file = Parse(bytes, findings, (reader, header) => reader.Read(header, packed));
        return TableOutcome<RunToImport>.Of(findings, () => RunToImport.Of(file! with { Warnings = findings.Warnings }, packed));
    }

    private static RunFile? Parse(ReadOnlyMemory<byte> bytes, Findings findings, Func<TableReader, RunFile, RunFile?> read)
    {
        if (TableLayout.OfFile(bytes, findings, Described, NamesExample) is not { } layout)
        {
            return null;
        }

        if (OtherTable.Named(layout) is { } other)
        {
            findings.Refuse(new(null, null, other.Name), $"{Described}; {other.Remedy}");
            return null;
        }

        var values = new ValueReader(findings, layout.Numbers);
        var header = RunHeader.Of(layout.Header, values);
        return findings.Well ? read(new(layout, values), header.ToFile()) : null;
    }
}
