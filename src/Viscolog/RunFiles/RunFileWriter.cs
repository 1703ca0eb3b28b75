using System.Globalization;
using System.Text.RegularExpressions;
using CsvHelper;

namespace Viscolog.RunFiles;

/// <summary>Writes run files: UTF-8 without byte order mark, LF, commas, decimal points.</summary>
internal static partial class RunFileWriter
{
    private static readonly CsvWriterOptions Options = CsvWriterOptions.Default with
    {
        Separator = ',',
        NewLine = "\n",
        FormatProvider = CultureInfo.InvariantCulture,
        // A first cell that begins like a header line is quoted, and so is space at a cell's ends, which readers trim.
        CommentPrefix = '#',
        Quoting = CsvQuoting.WhenNeededOrWhitespace,
        // The file is read back by this program; marks put before a text would change it.
        Injection = CsvInjection.None,
    };

    /// <summary>Writes the file; the stream stays open.</summary>
    /// <param name="file">The file.</param>
    /// <param name="stream">Where to.</param>
    /// <param name="spreadsheetSafe">Whether to put a mark before texts that a spreadsheet would take for formulas; such a file says something else than the run does.</param>
    /// <exception cref="ArgumentException">A thickener's name or trait can't stand in a file (see <see cref="ThickenerLine.CanName"/>).</exception>
    public static void Write(RunFile file, Stream stream, bool spreadsheetSafe = false)
    {
        if (file.Run.Thickeners.FirstOrDefault(t => !ThickenerLine.CanName(t.Name)) is { } odd)
        {
            throw new ArgumentException($"the name '{odd.Name}' can't stand in a run file", nameof(file));
        }

        var rows = file.Contents().ToList();
        var columns = InUse(file, rows);
        using var writer = CsvWriter.Create(stream, spreadsheetSafe ? Options with { Injection = CsvInjection.Escape } : Options, leaveOpen: true);
        WriteHeader(file, spreadsheetSafe, writer);
        WriteNames(file, columns, writer);
        for (var i = 0; i < rows.Count; i++)
        {
            WriteRow(rows[i], file.UnknownColumns.Length, columns, writer);
        }
    }

    private static void WriteHeader(RunFile file, bool spreadsheetSafe, CsvWriter writer)
    {
        foreach (var line in HeaderText.Of(file))
        {
            writer.WriteComment(" " + (spreadsheetSafe ? CellStart().Replace(line, "${between}'${formula}") : line));
        }
    }

    // A spreadsheet cuts header lines into cells too, at commas or at semicolons.
    [GeneratedRegex(@"(?<between>[,;\t]\s*)(?<formula>[=+\-@])", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex CellStart();

    private static void WriteNames(RunFile file, IEnumerable<Column> columns, CsvWriter writer)
    {
        foreach (var name in columns.Select(c => c.Name).Concat(file.UnknownColumns))
        {
            // The header row tells the separator, so a name may show no other outside quotes.
            writer.WriteField(name, name.Contains(';', StringComparison.Ordinal) ? CsvQuoting.Always : CsvQuoting.WhenNeededOrWhitespace);
        }

        writer.EndRecord();
    }

    private static void WriteRow(FileRow row, int unknownCount, IEnumerable<Column> columns, CsvWriter writer)
    {
        foreach (var column in columns)
        {
            writer.WriteField(column.Show(row) ?? "");
        }

        for (var i = 0; i < unknownCount; i++)
        {
            writer.WriteField(i < row.Unknown.Length ? row.Unknown[i] : "");
        }

        writer.EndRecord();
    }

    private static List<Column> InUse(RunFile file, IReadOnlyCollection<FileRow> rows)
    {
        var basic = new HashSet<Column>(ReferenceEqualityComparer.Instance) { Columns.Thickener, Columns.AddedGrams, Columns.Stir, Columns.Wait };
        if (rows.All(r => r.Reading?.Value is null))
        {
            var usual = file.Run.MethodInForce.Scales[0];
            basic.UnionWith(usual.HasSpeed ? [Columns.Of(usual), Columns.Speed] : [Columns.Of(usual)]);
        }

        return [.. Columns.All.Where(c => basic.Contains(c) || rows.Any(r => c.Show(r) is not null))];
    }
}
