using Terminal.Gui.Input;

namespace Viscolog.Tui.Pattern;

/// <summary>Keys by the names that footers and help show.</summary>
internal static class KeyName
{
    public static string Of(Key key) => key.ToString() switch
    {
        "CursorUp" => "Up",
        "CursorDown" => "Down",
        "CursorLeft" => "Left",
        "CursorRight" => "Right",
        "PageUp" => "PgUp",
        "PageDown" => "PgDn",
        ['C', 't', 'r', 'l', '+', var letter] => $"^{letter}",
        var name => name,
    };
}
