using Viscolog.Tables;

namespace Viscolog.Cli.Calls;

/// <summary>Why a call did not do what was asked, in parts for scripts.</summary>
/// <param name="Text">All of it on one line.</param>
/// <param name="Error">What is wrong.</param>
/// <param name="Hint">What to do, or what is expected; null where nothing can be said.</param>
internal sealed record Failure(string Text, string Error, string? Hint)
{
    /// <summary>The file; null where it is none.</summary>
    public string? File { get; init; }

    /// <summary>Its line, of a sheet its row; null where it is the whole file.</summary>
    public int? Line { get; init; }

    /// <summary>The column; null where it is not one cell.</summary>
    public string? Column { get; init; }

    /// <summary>A sentence whose hint, where it has one, follows the first semicolon.</summary>
    public static Failure Of(string text)
        => text.IndexOf("; ", StringComparison.Ordinal) is > 0 and var mark
            ? new(text, text[..mark], text[(mark + 2)..])
            : new(text, text, null);

    /// <summary>A refused file.</summary>
    public static Failure Of(Refusal refusal)
        => new(
            refusal.Text,
            $"read {refusal.Read}",
            $"expected {refusal.Expected}")
        { File = refusal.File, Line = refusal.Line, Column = refusal.Column };
}
