namespace Viscolog.Tui;

/// <summary>A piece of a line.</summary>
internal readonly record struct Piece(string Text, Tone Tone = Tone.Plain);
