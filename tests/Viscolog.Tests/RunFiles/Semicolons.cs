using Viscolog.RunFiles;

namespace Viscolog.Tests.RunFiles;

/// <summary>Writes a run file the other way that the format allows: semicolons and decimal commas.</summary>
internal static class Semicolons
{
    private static readonly string[] Texts = ["name", "base", "lot", "operator", "note", "method"];

    public static string Write(RunFile file)
    {
        var header = HeaderKeys.All.SelectMany(
            k => k.Show(file).Select(v => $"# {k.Name}: {(Texts.Contains(k.Name, StringComparer.Ordinal) ? v : v.Replace('.', ','))}"));
        var unknown = file.UnknownKeys.Select(k => $"# {k.Key}: {k.Value}");
        var columns = Columns.All.Where(c => c.Name is not ("added_pct" or "viscosity_cp" or "viscosity_pas")).ToList();
        var names = Row(columns.Select(c => c.Name).Concat(file.UnknownColumns));
        var rows = file.Contents().Select(r => Row(columns.Select(c => Cell(c, r)).Concat(r.Unknown)));
        return string.Join("\r\n", [.. header.Concat(unknown).Select(Line), names, .. rows]);
    }

    // As everywhere, a text that could be taken for cells stands in quotes.
    private static string Line(string line)
        => line.TrimEnd().EndsWith(';')
            || line.Contains('"', StringComparison.Ordinal)
            || line.Contains(":;", StringComparison.Ordinal)
            || line.Contains(": ;", StringComparison.Ordinal) ? Row([line]) : line;

    private static string Cell(Column column, FileRow content)
    {
        var text = column.Show(content) ?? "";
        return column.Range is null ? text : text.Replace('.', ',');
    }

    private static string Row(IEnumerable<string> cells)
        => string.Join(';', cells.Select(c => $"\"{c.Replace("\"", "\"\"", StringComparison.Ordinal)}\""));
}
