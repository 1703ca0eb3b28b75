using Terminal.Gui.Views;
using Viscolog.Text;

namespace Viscolog.Tui.Pattern;

/// <summary>Puts pasted text into a field at once: letter by letter, as the toolkit does it, a long one takes half a minute.</summary>
internal static class PastedText
{
    private const int Longest = 500;

    /// <summary>Puts the first line of a text where the cursor stands, cut to what a field is for.</summary>
    public static void Into(TextField field, string pasted)
    {
        var line = pasted.Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries).FirstOrDefault(l => l.Trim().Length > 0, "");
        var at = Math.Clamp(field.InsertionPoint, 0, field.Text.Length);
        var put = OneLine.Cut(line.Trim(), Longest);
        field.Text = field.Text[..at] + put + field.Text[at..];
        field.InsertionPoint = at + put.Length;
    }
}
