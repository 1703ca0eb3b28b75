using System.Collections.Immutable;
using System.Globalization;
using Viscolog.Text;

namespace Viscolog.Tables;

/// <summary>What was found while one file is read: the first refusal, and every warning.</summary>
internal sealed class Findings(string file)
{
    private const int LongestName = 60;
    private const int LongestWarning = 1000;

    private readonly ImmutableArray<string>.Builder _warnings = ImmutableArray.CreateBuilder<string>();

    /// <summary>The first refusal; null while all is well.</summary>
    public Refusal? Refusal { get; private set; }

    /// <summary>Whether nothing was refused.</summary>
    public bool Well => Refusal is null;

    /// <summary>The warnings in order.</summary>
    public ImmutableArray<string> Warnings => _warnings.ToImmutable();

    /// <summary>Refuses the file; what was refused before stands.</summary>
    public void Refuse(Place at, string expected)
        => Refusal ??= new(
            file, at.Line, at.Column is null ? null : OneLine.Cut(TerminalText.Of(at.Column), LongestName), at.Read, expected);

    /// <summary>Warns of something on a line.</summary>
    public void Warn(int line, string text)
        => _warnings.Add(OneLine.Cut(TerminalText.Of(FormattableString.Invariant($"{file}, line {line}: {text}")), LongestWarning));
}

/// <summary>Where a text stands in a file, and how a refusal shows it.</summary>
internal readonly record struct Place(int? Line, string? Column, string Read);

/// <summary>Why a file was refused whole.</summary>
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
            return TerminalText.Of($"{File}{line}{column}: read {Read}, expected {Expected}");
        }
    }
}
