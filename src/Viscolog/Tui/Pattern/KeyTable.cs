using System.Collections.Immutable;
using Viscolog.Text;

namespace Viscolog.Tui.Pattern;

/// <summary>The keys of a screen, stated once: dispatch, footer, help and documents are made from them.</summary>
/// <param name="Title">The screen.</param>
/// <param name="Rows">The keys, in the order of the footer.</param>
internal sealed record KeyTable<TEvent>(string Title, params ImmutableArray<KeyRow<TEvent>> Rows)
    where TEvent : class
{
    /// <summary>A name that every key answers to.</summary>
    public const string AnyKey = "any key";

    private const string Footers = "key";

    /// <summary>From so many columns on the footer has its longer words.</summary>
    public int WideFrom { get; init; }

    /// <summary>Between two keys of the wide footer.</summary>
    public string Gap { get; init; } = "  ";

    /// <summary>Help above the keys.</summary>
    public ImmutableArray<string> Above { get; init; } = [];

    /// <summary>Help below the keys.</summary>
    public ImmutableArray<string> Below { get; init; } = [];

    /// <summary>What a key does; null where it does nothing.</summary>
    public Press<TEvent>? Find(string key, FieldTexts fields)
    {
        foreach (var row in Rows)
        {
            var place = row.Name == AnyKey ? 0 : Array.IndexOf(row.Keys, key);
            var sent = place < 0 ? null : row.Typed is { } typed ? typed(fields) : row.Events.ElementAtOrDefault(place);
            if (place >= 0 && (sent is not null || row.Role != KeyRole.Sends))
            {
                return new(row.Role, sent);
            }
        }

        return null;
    }

    /// <summary>
    /// The keys in so many columns: those in front where not all fit, but always the ones for help, to go back and to quit.
    /// </summary>
    public string Footer(int width, bool isAscii)
        => " " + string.Join(width >= WideFrom ? Gap : " ", Shown(width, isAscii).Select(s => s.Text));

    /// <summary>The key that the footer shows at a column; null between them.</summary>
    public string? KeyAt(int width, bool isAscii, int column)
    {
        var (at, gap) = (1, width >= WideFrom ? Gap.Length : 1);
        foreach (var (keys, text) in Shown(width, isAscii))
        {
            if (column >= at && column < at + text.Length)
            {
                return keys[0];
            }

            at += text.Length + gap;
        }

        return null;
    }

    // The table is made once and said often. What the footer says may be shorter than the same word elsewhere.
    private static string Told(string text) => text.Length == 0 ? "" : Say(text);

    private static string Brief(string text) => text.Length > 0 && Say(text, Footers) is var brief && brief != text ? brief : Told(text);

    // Spelt out in ASCII a word may be longer.
    private static string Written(string text, bool isAscii) => isAscii ? AsciiText.Of(text) : text;

    private static string Named(string name) => name == AnyKey ? Say("any key") : name;

    private List<(string[] Keys, string Text)> Shown(int width, bool isAscii)
    {
        var isWide = width >= WideFrom;
        var gap = isWide ? Gap.Length : 1;
        var shown = Rows.Where(r => (isWide ? r.Word : r.Brief) is not null)
            .Select(r => (
                r.Keys,
                Text: Written($"{Named(r.Name)} {Brief((isWide ? r.Word : r.Brief)!)}".TrimEnd(), isAscii),
                Stays: r.Role is not KeyRole.Sends))
            .ToList();
        while (shown.Sum(s => s.Text.Length + gap) - gap > width - 1 && shown.FindLastIndex(s => !s.Stays) is >= 0 and var last)
        {
            shown.RemoveAt(last);
        }

        return [.. shown.Select(s => (s.Keys, s.Text))];
    }

    /// <summary>The help in lines of so many columns; two keys stand in a line where they fit.</summary>
    public IEnumerable<string> HelpLines(int columns)
    {
        var rows = Rows.Where(r => r.Help.Length > 0).ToList();
        var names = rows.Select(r => r.Name.Length).Append(0).Max() + 1;
        var left = 2 * columns / 3;
        var waiting = "";
        var lines = new List<string>();
        foreach (var cell in rows.Select(r => r.Name.PadRight(names) + Told(r.Help)))
        {
            if (waiting.Length > 0 && cell.Length <= columns - left)
            {
                lines.Add(waiting.PadRight(left) + cell);
                waiting = "";
                continue;
            }

            lines.AddRange(waiting.Length > 0 ? [waiting] : []);
            waiting = cell.Length < left ? cell : "";
            lines.AddRange(waiting.Length > 0 ? [] : [cell]);
        }

        lines.AddRange(waiting.Length > 0 ? [waiting] : []);
        IEnumerable<string>[] parts = [Above.Select(Told), lines, Below.Select(Told)];
        return parts.Where(p => p.Any()).SelectMany((p, i) => i > 0 ? p.Prepend("") : p)
            .SelectMany(l => l.Length <= columns ? [l] : Paragraph.Of(l, columns));
    }
}

/// <summary>What a key does: most of them send an event, a few do the same on every screen.</summary>
internal enum KeyRole
{
    Sends,
    Helps,
    Leaves,
    Quits,
}

/// <summary>What stands in a screen's fields as a key is pressed.</summary>
/// <param name="Texts">Their texts.</param>
/// <param name="Focused">The place of the field that is typed into; -1 for none.</param>
internal sealed record FieldTexts(ImmutableArray<string> Texts, int Focused);

/// <summary>A key of a screen, or several that belong together: what they do, and how footer and help name them.</summary>
/// <param name="Name">As shown, such as F2 or Up/Down.</param>
/// <param name="Word">Behind the name in the footer; null where the footer leaves the key out.</param>
/// <param name="Help">What it does, in help and documents; empty where those leave the key out.</param>
/// <param name="Events">An event for each key in the name.</param>
internal sealed record KeyRow<TEvent>(string Name, string? Word, string Help, params ImmutableArray<TEvent> Events)
    where TEvent : class
{
    /// <summary>The keys in the name, a slash alone among them.</summary>
    public string[] Keys => Name.Length == 1 ? [Name] : Name.Split(['/', ','], StringSplitOptions.TrimEntries);

    /// <summary>Behind the name in a narrow footer; null where that leaves the key out.</summary>
    public string? Brief { get; init; } = Word;

    /// <summary>The event where it depends on what is typed; null from it leaves the key to the field.</summary>
    public Func<FieldTexts, TEvent?>? Typed { get; init; }

    public KeyRole Role { get; init; }
}

/// <summary>A key as it was found in a table.</summary>
internal sealed record Press<TEvent>(KeyRole Role, TEvent? Event);
