using Viscolog.Core.Pots;
using Viscolog.Tables;
using Viscolog.Text;

namespace Viscolog.RunFiles;

/// <summary>A row as words <c>column=value</c>, with decimal points, by the columns of a run file.</summary>
internal static class RowWords
{
    /// <summary>The row; null with what is wrong.</summary>
    /// <param name="run">The run that it belongs to, as it stands.</param>
    /// <param name="words">The words.</param>
    public static (FileRow? Row, string? Trouble) Read(Run run, IEnumerable<string> words)
    {
        var (draft, numbers) = (new RowDraft(run), new FileNumbers(','));
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var word in words)
        {
            var mark = word.IndexOf('=', StringComparison.Ordinal);
            var (name, text) = mark < 0 ? (word, "") : (word[..mark].Trim(), word[(mark + 1)..]);
            if (mark < 0 || !Columns.ByName.TryGetValue(name, out var column))
            {
                var meant = Spelling.Meant(name, Columns.ByName.Keys) is { } close
                    ? $"did you mean {close}?"
                    : "by the columns of a run file, such as viscosity_mpas=1420";
                return (null, $"read {OneLine.Quoted(word)}, expected column=value; {meant}");
            }

            if (!seen.Add(name))
            {
                return (null, $"{name}: given twice; give it once");
            }

            if (text.Length > 0 && column.Take(draft, text, numbers) is { } expected)
            {
                return (null, $"{column.Name}: read {OneLine.Quoted(text)}, expected {expected}");
            }
        }

        return draft.ToRow(run.PotNow(), out var fault) is { } row
            ? row.Entries().Any()
            ? (row, null)
            : (null, $"read {RowAppender.NothingRead}, expected an addition, let-down, water, sample, reading or note")
            : (null, $"{fault!.Column?.Name}: expected {fault.Expected}");
    }
}
