using System.Globalization;
using Viscolog.Text;

namespace Viscolog.RunFiles;

/// <summary>Why a run file was refused whole.</summary>
/// <param name="File">The file, as it was named.</param>
/// <param name="Line">The line of the file, from 1; null where it is the file as a whole.</param>
/// <param name="Column">The column; null where it is not one cell.</param>
/// <param name="Read">What stands there.</param>
/// <param name="Expected">What ought to stand there, and what to do.</param>
internal sealed record Refusal(string File, int? Line, string? Column, string Read, string Expected)
{
    /// <summary>All of it on one line.</summary>
    public string Text
    {
        get
        {
            var line = Line is { } l ? string.Create(CultureInfo.InvariantCulture, $", line {l}") : "";
            var column = Column is null ? "" : $", column {Column}";
            return OneLine.Of($"{File}{line}{column}: read {Read}, expected {Expected}");
        }
    }
}
