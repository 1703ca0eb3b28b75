namespace Viscolog.Tui;

/// <summary>A field of a form.</summary>
/// <param name="Label">What it asks for.</param>
/// <param name="Text">What stands in it at first.</param>
/// <param name="Hint">Unit or choices, behind it.</param>
internal sealed record FormField(string Label, string Text = "", string Hint = "");
