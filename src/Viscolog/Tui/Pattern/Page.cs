using Viscolog.Text;

namespace Viscolog.Tui.Pattern;

/// <summary>What a screen shows, as lines of text that fit it; drawn by a view that knows nothing else.</summary>
internal sealed class Page(int width, int height, bool isAscii)
{
    public const int LeastWidth = 60;
    public const int LeastHeight = 16;

    private readonly List<IReadOnlyList<Piece>> _lines = [];

    public int Width => width;

    public int Height => height;

    public bool IsAscii => isAscii;

    public IReadOnlyList<IReadOnlyList<Piece>> Lines => _lines;

    /// <summary>The page as plain text.</summary>
    public string Text => string.Join('\n', _lines.Select(l => string.Concat(l.Select(p => p.Text)).TrimEnd()));

    /// <summary>Adds a line, cut to the width.</summary>
    public void Add(params IEnumerable<Piece> pieces)
    {
        var line = new List<Piece>();
        var left = width;
        foreach (var piece in pieces)
        {
            var text = PlainText.Shorten(Shown(piece.Text), left, isAscii ? "..." : "…");
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

    /// <summary>The text in exactly so many columns.</summary>
    public string Fit(string text, int columns, bool toRight = false)
    {
        var cut = PlainText.Shorten(Shown(text), columns, isAscii ? "~" : "…");
        var space = new string(' ', Math.Max(0, columns - PlainText.Columns(cut)));
        return toRight ? space + cut : cut + space;
    }

    private string Shown(string text) => isAscii ? AsciiText.Of(text) : text;
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
