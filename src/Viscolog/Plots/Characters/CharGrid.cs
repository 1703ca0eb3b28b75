using System.Text;
using Viscolog.Text;

namespace Viscolog.Plots.Characters;

/// <summary>Cells of characters with a finer grid of dots beneath: 2 × 4 a cell in braille, or one a cell in plain characters.</summary>
internal sealed class CharGrid
{
    private const char BrailleBase = '\u2800';

    /// <summary>Bits of the braille pattern by row and column within a cell (Unicode block 2800: dots 1–3, 7 left, 4–6, 8 right).</summary>
    private static readonly int[][] Bits = [[0x01, 0x08], [0x02, 0x10], [0x04, 0x20], [0x40, 0x80]];

    private readonly string?[,] _cells;
    private readonly int[,] _dots;
    private readonly bool _plain;

    public CharGrid(int columns, int rows, bool plain)
    {
        (Columns, Rows, _plain) = (columns, rows, plain);
        _cells = new string?[columns, rows];
        _dots = new int[columns, rows];
    }

    public int Columns { get; }

    public int Rows { get; }

    /// <summary>Dots across.</summary>
    public int DotColumns => _plain ? Columns : 2 * Columns;

    /// <summary>Dots down.</summary>
    public int DotRows => _plain ? Rows : 4 * Rows;

    /// <summary>Sets one character; outside the grid nothing happens.</summary>
    public void Put(int column, int row, char mark)
    {
        if (Holds(column, row))
        {
            _cells[column, row] = mark.ToString();
        }
    }

    /// <summary>Sets one dot; in plain characters <paramref name="plain"/> takes its place. Marks already there stay.</summary>
    public void Dot(int column, int row, char plain)
    {
        if (column < 0 || row < 0 || column >= DotColumns || row >= DotRows)
        {
            return;
        }

        if (_plain)
        {
            _cells[column, row] = plain.ToString();
            return;
        }

        _cells[column / 2, row / 4] = null;
        _dots[column / 2, row / 4] |= Bits[row % 4][column % 2];
    }

    /// <summary>Writes a text from left to right, cut at the grid's edge; wide characters take two cells.</summary>
    public void Write(int column, int row, string text)
    {
        foreach (var rune in text.EnumerateRunes())
        {
            var width = PlainText.Columns(rune);
            if (width == 0 || !Holds(column, row) || !Holds(column + width - 1, row))
            {
                continue;
            }

            _cells[column, row] = rune.ToString();
            if (width == 2)
            {
                _cells[column + 1, row] = "";
            }

            column += width;
        }
    }

    /// <summary>One row as text.</summary>
    public string Row(int row)
    {
        var result = new StringBuilder(Columns);
        for (var column = 0; column < Columns; column++)
        {
            var dots = _dots[column, row];
            result.Append(_cells[column, row] ?? (dots == 0 ? " " : ((char)(BrailleBase + dots)).ToString()));
        }

        return result.ToString();
    }

    private bool Holds(int column, int row) => column >= 0 && row >= 0 && column < Columns && row < Rows;
}
