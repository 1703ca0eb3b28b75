using Viscolog.Tables;

namespace Viscolog.RunFiles;

/// <summary>A run's header as lines <c>key: value</c>, without the mark before them.</summary>
internal static class HeaderText
{
    /// <summary>The lines that say all that the header says.</summary>
    public static IEnumerable<string> Of(RunFile file)
    {
        var known = HeaderKeys.All.SelectMany(k => k.Show(file).Select(v => (k.Name, Value: v)));
        return known.Concat(file.UnknownKeys.Select(u => (Name: u.Key, u.Value))).Select(l => Line(l.Name, l.Value));
    }

    /// <summary>A file without rows from such lines.</summary>
    /// <exception cref="FormatException">They are not what <see cref="Of"/> gave.</exception>
    public static RunFile Read(IEnumerable<string> lines)
        => TryRead(lines) is ({ } file, _, _) ? file : throw new FormatException(TryRead(lines).Refusal);

    /// <summary>A file without rows from lines that somebody typed; null with what is wrong, and in which line, from 1.</summary>
    public static (RunFile? File, string? Refusal, int? Line) TryRead(IEnumerable<string> lines)
    {
        var findings = new Findings("header");
        var header = RunHeader.Of(lines.Select(Line), new(findings, new(',')));
        return findings.Refusal is { } refusal
            ? (null, $"read {refusal.Read}, expected {refusal.Expected}", refusal.Line)
            : (header.ToFile(), null, null);
    }

    // A header line has no way to hold a line break.
    private static string Line(string key, string value)
        => $"{key}: {value}".Replace('\r', ' ').Replace('\n', ' ').Replace('\0', ' ').TrimEnd();

    private static HeaderLine Line(string text, int place)
    {
        var mark = text.IndexOf(':', StringComparison.Ordinal);
        return mark > 0
            ? new(place + 1, text[..mark], text[(mark + 1)..].Trim())
            : throw new FormatException($"header line without a key: {text}");
    }
}
