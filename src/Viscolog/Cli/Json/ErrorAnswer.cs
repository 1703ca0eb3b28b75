namespace Viscolog.Cli.Json;

/// <summary>Why a call did not do what was asked, as <c>viscolog.error/1</c>.</summary>
/// <param name="Error">What is wrong.</param>
/// <param name="Hint">What to do, or what is expected.</param>
/// <param name="File">The file.</param>
/// <param name="Line">Its line, of a sheet its row.</param>
/// <param name="Column">The column.</param>
/// <param name="ExitCode">The exit code of the call.</param>
internal sealed record ErrorAnswer(
    string Error,
    string? Hint,
    string? File,
    int? Line,
    string? Column,
    int ExitCode) : Answer("viscolog.error/1");

/// <summary>Why one of several files was not taken.</summary>
internal sealed record FileError(string Error, string? Hint, string? File, int? Line, string? Column);

/// <summary>What goes to standard output as text without <c>--json</c>, as <c>viscolog.text/1</c>.</summary>
/// <param name="Text">All of it.</param>
internal sealed record TextAnswer(string Text) : Answer("viscolog.text/1");
