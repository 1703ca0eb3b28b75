using System.Text;
using Viscolog.Core.Checking;
using Viscolog.MaterialFiles;
using Viscolog.Tables;

namespace Viscolog.Tests.MaterialFiles;

/// <summary>Materials files as text, for tests.</summary>
internal static class MaterialText
{
    public static string Write(IEnumerable<MaterialRow> rows)
    {
        using var stream = new MemoryStream();
        MaterialFileWriter.Write(rows, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    public static MaterialFile Read(string text) => MaterialFileReader.Parse("m.csv", Encoding.UTF8.GetBytes(text)) switch
    {
        TableOutcome<MaterialFile>.Read read => read.File,
        TableOutcome<MaterialFile>.Refused refused => throw new InvalidOperationException(refused.Refusal.Text),
        _ => throw new InvalidOperationException("a case that the test does not know"),
    };

    /// <summary>The other way that the format allows: semicolons, decimal commas, CR LF.</summary>
    public static string Semicolons(MaterialRow[] rows)
    {
        var unknown = rows.SelectMany(r => r.Unknown.Keys).Distinct(StringComparer.Ordinal).ToList();
        var lines = rows.Select(r => Row(
            [
                MaterialCells.KindOf(r.Material),
                r.Material.Name,
                .. MaterialColumns.All.Select(c => Cell(c, r.Material)),
                .. unknown.Select(u => r.Unknown.GetValueOrDefault(u, "")),
            ]));
        return string.Join(
            "\r\n", ["# viscolog-materials: 1", Row(["kind", "name", .. MaterialColumns.All.Select(c => c.Name), .. unknown]), .. lines]);
    }

    public static IEnumerable<string> Sorted(IEnumerable<MaterialRow> rows) => rows.Select(Whole).Order(StringComparer.Ordinal);

    public static string Whole(MaterialRow row) => $"{row.Material} {string.Join('|', row.Unknown)}";

    public static string Refusal(string text)
        => Assert.IsType<TableOutcome<MaterialFile>.Refused>(MaterialFileReader.Parse("m.csv", Encoding.UTF8.GetBytes(text))).Refusal.Text;

    /// <summary>Any bytes are read, and then written and read again as the same, or refused with one line.</summary>
    public static void AssertAnswer(ReadOnlyMemory<byte> bytes)
    {
        if (MaterialFileReader.Parse("m.csv", bytes) is TableOutcome<MaterialFile>.Refused refused)
        {
            Assert.StartsWith("m.csv", refused.Refusal.Text, StringComparison.Ordinal);
            Assert.DoesNotContain(refused.Refusal.Text, char.IsControl);
        }
        else
        {
            var file = Assert.IsType<TableOutcome<MaterialFile>.Read>(MaterialFileReader.Parse("m.csv", bytes)).File;
            Assert.Equal(Sorted(file.Rows), Sorted(Read(Write(file.Rows)).Rows), StringComparer.Ordinal);
        }
    }

    private static string Cell(MaterialColumn column, Material material)
    {
        var text = column.Show(material) ?? "";
        return column.Name is "method" or "base" or "thickener" or "note" ? text : text.Replace('.', ',');
    }

    private static string Row(IEnumerable<string> cells)
        => string.Join(';', cells.Select(c => $"\"{c.Replace("\"", "\"\"", StringComparison.Ordinal)}\""));
}
