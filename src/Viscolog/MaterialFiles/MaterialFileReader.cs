using System.Collections.Immutable;
using System.Globalization;
using CsvHelper;
using Viscolog.RunFiles;
using Viscolog.Text;

namespace Viscolog.MaterialFiles;

/// <summary>Reads materials files; docs/file-formats.md describes them.</summary>
internal static class MaterialFileReader
{
    /// <summary>The header key that tells a materials file.</summary>
    public const string Key = "viscolog-materials";

    /// <summary>The version of the format.</summary>
    public const string Version = "1";

    private const string NamesExample = "'kind,name,density_g_ml,note'";

    private const string Described = $"a materials file: a line '# {Key}: {Version}', a row of column names, and a row for each material";

    /// <summary>Whether these are the first bytes of a materials file.</summary>
    public static bool IsMaterials(ReadOnlySpan<byte> bytes) => FirstKey.Is(bytes, Key);

    /// <summary>Reads a file's bytes.</summary>
    /// <param name="fileName">How refusals and warnings name it.</param>
    /// <param name="bytes">All of it.</param>
    public static MaterialFileOutcome Parse(string fileName, ReadOnlyMemory<byte> bytes)
    {
        var findings = new Findings(fileName);
        var rows = Rows(bytes, findings);
        return findings.Refusal is { } refusal ? new MaterialFileOutcome.Refused(refusal) : new MaterialFileOutcome.Read(new(rows, findings.Warnings));
    }

    private static ImmutableArray<MaterialRow> Rows(ReadOnlyMemory<byte> bytes, Findings findings)
    {
        if (RunFileReader.CheckedText(bytes, findings, Described) is not { } text || RunFileLayout.Of(text, findings, NamesExample) is not { } layout)
        {
            return [];
        }

        foreach (var line in layout.Header)
        {
            if (!Same(line.Key, Key) || line.Value != Version || line != layout.Header[0])
            {
                findings.Refuse(line.Place, $"the header line '# {Key}: {Version}' alone");
            }
        }

        return findings.Well ? Rows(layout, findings) : [];
    }

    private static ImmutableArray<MaterialRow> Rows(RunFileLayout layout, Findings findings)
    {
        var linesBefore = layout.TableLine - 1;
        using var reader = CsvReader.Create(layout.Table, CsvReaderOptions.Default with
        {
            Separator = layout.Separator,
            FormatProvider = CultureInfo.InvariantCulture,
            TrackLineNumbers = true,
            TrimWhitespace = true,
            OnMalformedRecord = record => findings.Refuse(new(linesBefore + (int)record.LineNumber, null, OneLine.Quoted(record.RawRecord)), "quotes around the whole cell, closed, and each quote inside it doubled"),
        });
        reader.ReadHeader();
        var names = new List<string>();
        foreach (var name in reader.Headers)
        {
            names.Add(name.Trim());
        }

        CheckNames(names, layout.TableLine, findings);
        var rows = ImmutableArray.CreateBuilder<MaterialRow>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var values = new ValueReader(findings, new(layout.Separator));
        while (findings.Well && reader.Read() && findings.Well)
        {
            var line = linesBefore + (int)reader.LineNumber;
            var cells = new List<KeyValuePair<string, string>>();
            for (var i = 0; i < reader.FieldCount; i++)
            {
                if (reader.GetString(i) is var cell && !string.IsNullOrWhiteSpace(cell))
                {
                    cells.Add(new(i < names.Count ? names[i] : "", cell));
                }
            }

            if (cells.Count > 0 && Row(cells, line, seen, values) is { } row)
            {
                rows.Add(row);
            }
        }

        return rows.ToImmutable();
    }

    private static void CheckNames(List<string> names, int line, Findings findings)
    {
        foreach (var needed in (ReadOnlySpan<string>)["kind", "name"])
        {
            if (!names.Contains(needed, StringComparer.OrdinalIgnoreCase))
            {
                findings.Refuse(new(line, null, OneLine.Quoted(string.Join(',', names))), $"a header row with the columns kind and name, such as {NamesExample}");
            }
        }

        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var (i, name) in names.Index())
        {
            if (name.Length == 0 || !seen.Add(name))
            {
                findings.Refuse(new(line, name.Length == 0 ? FormattableString.Invariant($"{i + 1}") : name, OneLine.Quoted(name)), "each column once, with a name");
            }
            else if (!Same(name, "kind") && !Same(name, "name") && !MaterialColumns.ByName.ContainsKey(name))
            {
                if (UnitWords.Meant(name, MaterialColumns.ByName.Keys) is { Count: > 0 } meant)
                {
                    findings.Refuse(new(line, name, OneLine.Quoted(name)), $"{string.Join(" or ", meant)}: give it in that unit");
                }

                findings.Warn(line, $"column '{name}' is unknown; it is kept, not used");
            }
        }
    }

    private static MaterialRow? Row(List<KeyValuePair<string, string>> cells, int line, HashSet<string> seen, ValueReader values)
    {
        Place PlaceOf(string? column) => new(line, column, OneLine.Quoted(column is null ? string.Join(',', cells.Select(c => c.Value)) : cells.Find(c => Same(c.Key, column)).Value ?? ""));

        var findings = values.Findings;
        var kind = cells.Find(c => Same(c.Key, "kind")).Value?.Trim().ToLowerInvariant() ?? "";
        var name = cells.Find(c => Same(c.Key, "name")).Value?.Trim() ?? "";
        if (cells.Exists(c => c.Key.Length == 0))
        {
            findings.Refuse(PlaceOf(null), "no more fields than the header row names; a text that holds the separator goes into quotes");
        }
        else if (!MaterialKind.All.Contains(kind, StringComparer.Ordinal))
        {
            findings.Refuse(PlaceOf("kind"), $"a kind: {string.Join(", ", MaterialKind.All)}");
        }
        else if (!MaterialKind.CanName(kind, name))
        {
            findings.Refuse(PlaceOf("name"), MaterialKind.NameAdvice(kind));
        }
        else if (!seen.Add(kind + " " + name))
        {
            findings.Refuse(PlaceOf("name"), $"each {kind} once");
        }

        return findings.Well ? MaterialCells.Read(kind, name, cells.Where(c => !Same(c.Key, "kind") && !Same(c.Key, "name")), values, PlaceOf) : null;
    }

    private static bool Same(string left, string right) => string.Equals(left, right, StringComparison.OrdinalIgnoreCase);
}
