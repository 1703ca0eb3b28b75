namespace Viscolog.Cli;

/// <summary>How screens ended.</summary>
/// <param name="Fault">A fault of ours; null where there was none.</param>
/// <param name="Code">The exit code that a signal asks for; 0 where none came.</param>
internal sealed record ScreenEnd(Exception? Fault, int Code);
