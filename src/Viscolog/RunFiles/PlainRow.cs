using System.Collections.Immutable;
using Viscolog.Text;

namespace Viscolog.RunFiles;

/// <summary>A row as texts.</summary>
/// <param name="Line">The line of the file on which it begins.</param>
/// <param name="Cells">The cells that hold something, by column; capitals make no difference.</param>
internal sealed record PlainRow(int Line, ImmutableDictionary<string, string> Cells)
{
    /// <summary>The text of a cell; empty where there is none.</summary>
    public string Text(string column) => Cells.GetValueOrDefault(column, "");

    /// <summary>Where a cell stands and what it holds; the row as a whole without a column.</summary>
    public Place At(string? column) => new(Line, column, OneLine.Quoted(column is null ? string.Join(',', Cells.OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => c.Value)) : Text(column)));
}
