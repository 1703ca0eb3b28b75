using System.Text;
using System.Text.Json;
using Terminal.Gui.Configuration;

namespace Viscolog.Tui;

/// <summary>Makes Terminal.Gui's own lines and marks printable ASCII.</summary>
internal static class AsciiGlyphs
{
    public static void Use()
    {
        var glyphs = typeof(GlyphSettings).GetProperties()
            .Where(p => p.PropertyType == typeof(Rune)).ToDictionary(p => p.Name, p => Mark(p.Name), StringComparer.Ordinal);
        var config = new Dictionary<string, object>(StringComparer.Ordinal) { ["Glyphs"] = glyphs };
        new TuiConfigurationBuilder("viscolog") { RuntimeConfig = JsonSerializer.Serialize(config) }.ApplyToStaticFacades();
    }

    private static string Mark(string name) => name switch
    {
        "LeftBracket" => "[",
        "RightBracket" => "]",
        "LeftDefaultIndicator" => "<",
        "RightDefaultIndicator" => ">",
        "RightArrow" => ">",
        "LeftArrow" => "<",
        "UpArrow" => "^",
        "DownArrow" => "v",
        _ when name.Contains("Corner", StringComparison.Ordinal) || name.Contains("Tee", StringComparison.Ordinal)
            || name.Contains("Cross", StringComparison.Ordinal) => "+",
        _ when name.Contains("VLine", StringComparison.Ordinal) || name.Contains("LeftLine", StringComparison.Ordinal)
            || name.Contains("RightLine", StringComparison.Ordinal) => "|",
        _ when name.Contains("Line", StringComparison.Ordinal) => "-",
        _ => "*",
    };
}
