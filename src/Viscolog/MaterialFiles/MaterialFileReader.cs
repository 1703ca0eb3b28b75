using System.Collections.Immutable;
using Viscolog.Tables;

namespace Viscolog.MaterialFiles;

/// <summary>Reads materials files; docs/file-formats.md describes them.</summary>
internal static class MaterialFileReader
{
    /// <summary>The header line that tells a materials file.</summary>
    public static readonly FileKey Key = new("viscolog-materials", "1");

    private const string NamesExample = "'kind,name,density_g_ml,note'";

    private static readonly string Described =
        $"a materials file: a line '# {Key.Line}', a row of column names, and a row for each material";

    /// <summary>Reads a file's bytes.</summary>
    /// <param name="fileName">How refusals and warnings name it.</param>
    /// <param name="bytes">All of it.</param>
    public static TableOutcome<MaterialFile> Parse(string fileName, ReadOnlyMemory<byte> bytes)
    {
        var findings = new Findings(fileName);
        var rows = Rows(bytes, findings);
        return TableOutcome<MaterialFile>.Of(findings, () => new(rows, findings.Warnings));
    }

    private static ImmutableArray<MaterialRow> Rows(ReadOnlyMemory<byte> bytes, Findings findings)
    {
        if (TableLayout.OfFile(bytes, findings, Described, NamesExample) is not { } layout)
        {
            return [];
        }

        Key.Check(layout, findings);
        var words = TableWords.Usual with { Fields = null };
        if (!findings.Well || Table.Read(layout, findings, words, t => CheckNames(t, findings)) is not { } table)
        {
            return [];
        }

        var (seen, values) = (new HashSet<string>(StringComparer.Ordinal), new ValueReader(findings, layout.Numbers));
        return [.. table.Rows.TakeWhile(_ => findings.Well).Select(r => Row(r, seen, values)).OfType<MaterialRow>()];
    }

    private static void CheckNames(Table table, Findings findings)
    {
        if (!table.Has("kind") || !table.Has("name"))
        {
            findings.Refuse(table.Head, $"a header row with the columns kind and name, such as {NamesExample}");
        }

        table.CheckNames(findings);
        table.CheckUnknown([.. MaterialColumns.ByName.Keys, "kind", "name"], findings, "kept, not used");
    }

    private static MaterialRow? Row(TableRow row, HashSet<string> seen, ValueReader values)
    {
        var findings = values.Findings;
        var (kind, name) = (row.Text("kind").ToLowerInvariant(), row.Text("name"));
        if (row.Cells.Any(c => c.Key.Length == 0))
        {
            findings.Refuse(row.At(null), "no more fields than the header row names; a text that contains the separator goes in quotes");
        }
        else if (!MaterialKind.All.Contains(kind, StringComparer.Ordinal))
        {
            findings.Refuse(row.At("kind"), $"a kind: {string.Join(", ", MaterialKind.All)}");
        }
        else if (!MaterialKind.CanName(kind, name))
        {
            findings.Refuse(row.At("name"), MaterialKind.NameAdvice(kind));
        }
        else if (!seen.Add(kind + " " + name))
        {
            findings.Refuse(row.At("name"), $"each {kind} once");
        }

        return findings.Well
            ? MaterialCells.Read(kind, name, row.Cells.Where(c => !Same(c.Key, "kind") && !Same(c.Key, "name")), values, row.At)
            : null;
    }

    private static bool Same(string left, string right) => string.Equals(left, right, StringComparison.OrdinalIgnoreCase);
}

/// <summary>The materials of a file.</summary>
/// <param name="Rows">Each kind and name once.</param>
/// <param name="Warnings">What the reader ought to know, a line each.</param>
internal sealed record MaterialFile(ImmutableArray<MaterialRow> Rows, ImmutableArray<string> Warnings);
