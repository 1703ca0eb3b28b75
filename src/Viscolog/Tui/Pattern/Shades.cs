using Terminal.Gui.Drawing;
using Attribute = Terminal.Gui.Drawing.Attribute;

namespace Viscolog.Tui.Pattern;

/// <summary>
/// Tones as colours that hold on sixteen colours and for colour-blind people: blue-green for good, yellow for caution,
/// magenta for bad. Words say the same.
/// </summary>
/// <param name="hasColor">Whether colours may be used.</param>
internal sealed class Shades(bool hasColor)
{
    public Attribute Of(Tone tone) => (hasColor, tone) switch
    {
        (_, Tone.Plain) => new(Color.Gray, Color.Black),
        (_, Tone.Chosen) => new(Color.Black, Color.Gray),
        (_, Tone.Strong) => new(Color.White, Color.Black, TextStyle.Bold),
        (true, Tone.Dim) => new(Color.DarkGray, Color.Black),
        (true, Tone.Good) => new(Color.BrightCyan, Color.Black, TextStyle.Bold),
        (true, Tone.Caution) => new(Color.BrightYellow, Color.Black, TextStyle.Bold),
        (true, Tone.Bad) => new(Color.BrightMagenta, Color.Black, TextStyle.Bold),
        (false, Tone.Good or Tone.Caution or Tone.Bad) => new(Color.White, Color.Black, TextStyle.Bold),
        _ => new(Color.Gray, Color.Black),
    };

    /// <summary>The colours of fields and forms.</summary>
    public Scheme Scheme => new(Of(Tone.Plain))
    {
        Focus = new(Color.Black, Color.Gray),
        HotNormal = Of(Tone.Strong),
        HotFocus = new(Color.Black, Color.Gray),
        Editable = new(Color.White, Color.DarkGray),
    };
}
