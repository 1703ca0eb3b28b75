using Viscolog.Text;

namespace Viscolog.Tui.Pattern;

/// <summary>What a screen shows, as lines of text that fit it; drawn by a view that knows nothing else.</summary>
internal sealed class Page(Canvas canvas)
{
    public const int LeastWidth = 60;
    public const int LeastHeight = 16;

    private readonly List<IReadOnlyList<Piece>> _lines = [];

    public int Width => canvas.Width;

    public int Height => canvas.Height;

    public bool IsAscii => canvas.IsAscii;

    /// <summary>How sharing with other benches stands; empty where the log is not shared.</summary>
    public string Shared => canvas.Shared;

    public IReadOnlyList<IReadOnlyList<Piece>> Lines => _lines;

    /// <summary>The page as plain text.</summary>
    public string Text => string.Join('\n', _lines.Select(l => string.Concat(l.Select(p => p.Text)).TrimEnd()));

    /// <summary>Before a line that is chosen.</summary>
    public string ChosenMark => IsAscii ? ">" : "▸";

    /// <summary>A page that is drawn where there is room for it; else a line says how much it needs.</summary>
    public static Page Of(Canvas canvas, string name, Action<Page> draw, int leastWidth = LeastWidth, int leastHeight = LeastHeight)
    {
        var page = new Page(canvas);
        if (canvas.Width < leastWidth || canvas.Height < leastHeight)
        {
            page.Add(Say($"{name} needs {leastWidth} x {leastHeight} characters"));
        }
        else
        {
            draw(page);
        }

        return page;
    }

    /// <summary>The first line shown of so many, where not all fit: the chosen one stands in the middle.</summary>
    public static int First(int chosen, int count, int rows) => Math.Clamp(chosen - (rows / 2), 0, Math.Max(0, count - rows));

    /// <summary>Adds a line, cut to the width.</summary>
    public void Add(params IEnumerable<Piece> pieces)
    {
        var line = new List<Piece>();
        var left = Width;
        foreach (var piece in pieces)
        {
            var text = PlainText.Shorten(Shown(piece.Text), left, IsAscii ? "..." : "…");
            if (text.Length > 0)
            {
                line.Add(piece with { Text = text });
                left -= PlainText.Columns(text);
            }
        }

        _lines.Add(line);
    }

    public void Add(string text, Tone tone = Tone.Plain) => Add(new Piece(text, tone));

    /// <summary>Adds empty lines up to a row.</summary>
    public void FillTo(int row)
    {
        while (_lines.Count < row)
        {
            Add("");
        }
    }

    /// <summary>Adds the lines that fit above the last two, some of them passed over; says which they are where not all fit.</summary>
    public string AddScrolled(IReadOnlyList<Piece> lines, Scrolling passed)
    {
        var rows = Math.Max(1, Height - 2 - _lines.Count);
        var first = passed.First(lines.Count, rows);
        foreach (var line in lines.Skip(first).Take(rows))
        {
            Add(line);
        }

        var last = Math.Min(lines.Count, first + rows);
        return lines.Count > rows ? Say($"lines {first + 1} to {last} of {lines.Count}: PgUp, PgDn") : "";
    }

    /// <summary>Adds the last two lines: what was just said, and the keys.</summary>
    public void Foot<TEvent>(string said, KeyTable<TEvent> keys)
        where TEvent : class
    {
        FillTo(Height - 2);
        Add(" " + said, Tone.Dim);
        Add(keys.Footer(Width, IsAscii), Tone.Dim);
    }

    /// <summary>The text in exactly so many columns.</summary>
    public string Fit(string text, int columns, bool toRight = false)
    {
        var cut = PlainText.Shorten(Shown(text), columns, IsAscii ? "~" : "…");
        var space = new string(' ', Math.Max(0, columns - PlainText.Columns(cut)));
        return toRight ? space + cut : cut + space;
    }

    public string Shown(string text) => IsAscii ? AsciiText.Of(TerminalText.Of(text)) : TerminalText.Of(text);
}

/// <summary>A piece of a line.</summary>
internal readonly record struct Piece(string Text, Tone Tone = Tone.Plain);

/// <summary>How a piece of text stands out. Colour never carries meaning alone; the words do.</summary>
internal enum Tone
{
    Plain,
    Dim,
    Strong,
    Good,
    Caution,
    Bad,
    Chosen,
}
