namespace Viscolog.Tui;

/// <summary>How the screens ended.</summary>
/// <param name="Fault">A fault of ours; null where there was none.</param>
/// <param name="Signal">The signal that ended them; 0 where none did.</param>
internal sealed record TuiEnd(Exception? Fault, int Signal);
