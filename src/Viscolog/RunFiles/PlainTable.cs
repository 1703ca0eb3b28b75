using System.Collections.Immutable;
using System.Globalization;
using CsvHelper;
using Viscolog.Text;

namespace Viscolog.RunFiles;

/// <summary>The table of a file as texts: names of columns, and rows in which something stands.</summary>
/// <param name="Names">The names as they stand in the header row; each once.</param>
/// <param name="Line">The line of the header row.</param>
/// <param name="Rows">The rows.</param>
internal sealed record PlainTable(ImmutableArray<string> Names, int Line, ImmutableArray<PlainRow> Rows)
{
    /// <summary>The header row, where it is to blame.</summary>
    public Place Head => new(Line, null, OneLine.Quoted(string.Join(',', Names)));

    /// <summary>Reads a table; null where the file is refused.</summary>
    public static PlainTable? Read(RunFileLayout layout, Findings findings)
    {
        var linesBefore = layout.TableLine - 1;
        using var reader = CsvReader.Create(layout.Table, CsvReaderOptions.Default with
        {
            Separator = layout.Separator,
            FormatProvider = CultureInfo.InvariantCulture,
            TrackLineNumbers = true,
            TrimWhitespace = true,
            OnMalformedRecord = r => findings.Refuse(new(linesBefore + (int)r.LineNumber, null, OneLine.Quoted(r.RawRecord)), "quotes around the whole cell, closed, and each quote inside it doubled"),
        });
        reader.ReadHeader();
        var names = ImmutableArray.CreateBuilder<string>();
        foreach (var name in reader.Headers)
        {
            names.Add(name.Trim());
        }

        CheckNames(names, layout.TableLine, findings);
        var rows = ImmutableArray.CreateBuilder<PlainRow>();
        while (findings.Well && reader.Read() && findings.Well)
        {
            var line = linesBefore + (int)reader.LineNumber;
            var cells = ImmutableArray.CreateBuilder<string>(reader.FieldCount);
            for (var i = 0; i < reader.FieldCount; i++)
            {
                cells.Add(reader.GetString(i).Trim());
            }

            if (cells.Count > names.Count)
            {
                findings.Refuse(new(line, null, FormattableString.Invariant($"{cells.Count} fields")), FormattableString.Invariant($"at most {names.Count}, as many as the header row names; a text that holds the separator goes into quotes"));
            }
            else if (cells.Any(c => c.Length > 0))
            {
                rows.Add(new(line, names.Zip(cells).Where(c => c.Second.Length > 0).ToImmutableDictionary(c => c.First, c => c.Second, StringComparer.OrdinalIgnoreCase)));
            }
        }

        return findings.Well ? new(names.ToImmutable(), layout.TableLine, rows.ToImmutable()) : null;
    }

    private static void CheckNames(ImmutableArray<string>.Builder names, int line, Findings findings)
    {
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var (i, name) in names.Index())
        {
            if (name.Length == 0 || !seen.Add(name))
            {
                findings.Refuse(new(line, name.Length == 0 ? FormattableString.Invariant($"{i + 1}") : name, OneLine.Quoted(name)), "each column once, with a name");
            }
        }
    }
}
