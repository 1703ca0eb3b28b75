using System.Text.RegularExpressions;
using CsvHelper;
using Viscolog.Tables;

namespace Viscolog.RunFiles;

/// <summary>Writes run files: UTF-8 without byte order mark, LF, commas, decimal points.</summary>
internal static partial class RunFileWriter
{
    /// <summary>Writes the file; the stream stays open.</summary>
    /// <param name="file">The file.</param>
    /// <param name="stream">Where to.</param>
    /// <param name="spreadsheetSafe">
    /// Whether to put a mark before texts that a spreadsheet would take for formulas; such a file says something else than the run does.
    /// </param>
    /// <exception cref="ArgumentException">
    /// A thickener's name or trait can't stand in a file (see <see cref="ThickenerLine.CanName"/>).
    /// </exception>
    public static void Write(RunFile file, Stream stream, bool spreadsheetSafe = false)
        => Write(file, file.Contents(), stream, spreadsheetSafe);

    /// <summary>Writes a file whose rows are not all in memory.</summary>
    /// <inheritdoc cref="Write(RunFile, Stream, bool)"/>
    /// <param name="file">The file without its rows.</param>
    /// <param name="rows">The rows in order, to be gone through twice.</param>
    /// <param name="stream">Where to.</param>
    /// <param name="spreadsheetSafe">
    /// Whether to put a mark before texts that a spreadsheet would take for formulas; such a file says something else than the run does.
    /// </param>
    public static void Write(RunFile file, IEnumerable<FileRow> rows, Stream stream, bool spreadsheetSafe)
    {
        if (file.Run.Thickeners.FirstOrDefault(t => !ThickenerLine.CanName(t.Name)) is { } odd)
        {
            throw new ArgumentException($"the name '{odd.Name}' can't stand in a run file", nameof(file));
        }

        var columns = InUse(file, rows);
        using var writer = TableWriter.Create(stream, spreadsheetSafe);
        WriteHeader(file, spreadsheetSafe, writer);
        TableWriter.Names(writer, columns.Select(c => c.Name).Concat(file.UnknownColumns));
        foreach (var row in rows)
        {
            var unknown = file.UnknownColumns.Select((_, i) => i < row.Unknown.Length ? row.Unknown[i] : "");
            TableWriter.Row(writer, columns.Select(c => c.Show(row) ?? "").Concat(unknown));
        }
    }

    private static void WriteHeader(RunFile file, bool spreadsheetSafe, CsvWriter writer)
    {
        foreach (var line in HeaderText.Of(file))
        {
            var text = " " + (spreadsheetSafe ? CellStart().Replace(line, "${between}'${formula}") : line);
            if (HeaderCells.IsOtherUnquoted("#" + text))
            {
                writer.WriteField("#" + text, CsvQuoting.Always);
                writer.EndRecord();
            }
            else
            {
                writer.WriteComment(text);
            }
        }
    }

    // A spreadsheet cuts header lines into cells too, at commas or at semicolons.
    [GeneratedRegex(@"(?<between>[,;\t]\s*)(?<formula>[=+\-@])", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex CellStart();

    private static List<Column> InUse(RunFile file, IEnumerable<FileRow> rows)
    {
        var used =
            new HashSet<Column>(ReferenceEqualityComparer.Instance) { Columns.Thickener, Columns.AddedGrams, Columns.Stir, Columns.Wait };
        var isRead = false;
        foreach (var row in rows)
        {
            isRead |= row.Reading?.Value is not null;
            used.UnionWith(Columns.All.Where(c => !used.Contains(c) && c.Show(row) is not null));
        }

        if (!isRead)
        {
            var usual = file.Run.MethodInForce.Scales[0];
            used.UnionWith(usual.HasSpeed ? [Columns.Of(usual), Columns.Speed] : [Columns.Of(usual)]);
        }

        return [.. Columns.All.Where(used.Contains)];
    }
}
