using Terminal.Gui.Drawing;
using Attribute = Terminal.Gui.Drawing.Attribute;

namespace Viscolog.Tui.Pattern;

/// <summary>
/// Tones as colours for colour-blind people: blue-green for good, amber for caution, magenta for bad. Words say the same. Text and ground
/// are the terminal's own unless a theme is asked for; the other colours reach a contrast of 4.5 to 1 (WCAG 2.2, 1.4.3) on its ground.
/// </summary>
/// <param name="hasColor">Whether colours may be used; without them nothing but bold and reverse is sent.</param>
/// <param name="theme">The ground that the colours are made for.</param>
internal sealed class Shades(bool hasColor, Theme theme = Theme.Terminal)
{
    private static readonly Color Own = Color.None;

    private Color Ground => !hasColor ? Own : theme switch
    {
        Theme.Dark => Color.Black,
        Theme.Light => Color.White,
        _ => Own,
    };

    private Color Ink => !hasColor ? Own : theme switch
    {
        Theme.Dark => new Color(204, 204, 204),
        Theme.Light => Color.Black,
        _ => Own,
    };

    public Attribute Of(Tone tone) => (hasColor, tone) switch
    {
        (_, Tone.Plain) => new(Ink, Ground),
        (_, Tone.Chosen) => new(Ink, Ground, TextStyle.Reverse),
        (_, Tone.Strong) => new(Ink, Ground, TextStyle.Bold),
        (true, Tone.Good or Tone.Caution or Tone.Bad) => new(ColorOf(tone), Ground, TextStyle.Bold),
        (true, Tone.Dim) => new(ColorOf(tone), Ground),
        (false, Tone.Good or Tone.Caution or Tone.Bad) => new(Ink, Ground, TextStyle.Bold),
        _ => new(Ink, Ground),
    };

    /// <summary>The colours of fields and forms.</summary>
    public Scheme Scheme => new(Of(Tone.Plain))
    {
        Focus = Of(Tone.Chosen),
        HotNormal = Of(Tone.Strong),
        HotFocus = Of(Tone.Chosen),
        Editable = new(Ink, Ground, TextStyle.Underline),
    };

    /// <summary>A colour that is no text's own: on the terminal's own ground one that is read on black and on white alike.</summary>
    internal Color ColorOf(Tone tone) => (theme, tone) switch
    {
        (Theme.Dark, Tone.Dim) => new(140, 140, 140),
        (Theme.Dark, Tone.Good) => new(97, 214, 214),
        (Theme.Dark, Tone.Caution) => new(240, 200, 90),
        (Theme.Dark, Tone.Bad) => new(240, 120, 220),
        (Theme.Light, Tone.Dim) => new(95, 95, 95),
        (Theme.Light, Tone.Good) => new(0, 95, 100),
        (Theme.Light, Tone.Caution) => new(115, 80, 0),
        (Theme.Light, Tone.Bad) => new(150, 0, 120),
        (_, Tone.Dim) => new(118, 118, 118),
        (_, Tone.Good) => new(0, 130, 140),
        (_, Tone.Caution) => new(152, 112, 0),
        _ => new(207, 54, 152),
    };
}

/// <summary>The ground that colours are made for.</summary>
internal enum Theme
{
    /// <summary>The terminal's own, whichever it is.</summary>
    Terminal,
    Dark,
    Light,
}
