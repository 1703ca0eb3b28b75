using Viscolog.Plots;

namespace Viscolog.Cli;

/// <summary>A table in plain text: numbers to the right, texts to the left, columns as wide as they need.</summary>
internal sealed class TextTable(params string[] names)
{
    private readonly List<string[]> _rows = [];

    public void Add(params string[] cells) => _rows.Add([.. cells.Select(PlotText.Clean)]);

    public void Write(CallOutput terminal)
    {
        var used = Enumerable.Range(0, names.Length).Where(c => _rows.Exists(r => r[c].Length > 0)).ToList();
        var widths = used.ConvertAll(c => _rows.Max(r => Math.Max(PlotText.Columns(names[c]), PlotText.Columns(r[c]))));
        var toRight = used.ConvertAll(c => _rows.TrueForAll(r => r[c].Length == 0 || char.IsAsciiDigit(r[c][0]) || r[c][0] == '–') && !_rows.Exists(r => r[c].Contains('-', StringComparison.Ordinal)));
        terminal.Emphasized(Line(names));
        foreach (var row in _rows)
        {
            terminal.Line(Line(row));
        }

        string Line(string[] cells)
            => ("  " + string.Join("  ", used.Select((c, i) => Padded(cells[c], widths[i], toRight[i])))).TrimEnd();
    }

    private static string Padded(string text, int width, bool toRight)
    {
        var space = new string(' ', width - PlotText.Columns(text));
        return toRight ? space + text : text + space;
    }
}
