using Viscolog.MaterialFiles;

namespace Viscolog.Tui.Materials;

/// <summary>The kinds of material as a person reads and types them; files have names of their own for them.</summary>
internal static class KindWords
{
    /// <summary>Every kind, in words.</summary>
    public static string List => string.Join(", ", MaterialKind.All.Select(Of));

    public static string Of(string kind) => kind switch
    {
        MaterialKind.Base => Say("base"),
        MaterialKind.Thickener => Say("thickener"),
        MaterialKind.Method => Say("method"),
        MaterialKind.Specification => Say("specification"),
        MaterialKind.Instrument => Say("instrument"),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "not a kind"),
    };

    /// <summary>A new one of the kind.</summary>
    public static string New(string kind) => kind switch
    {
        MaterialKind.Base => Say("A new base"),
        MaterialKind.Thickener => Say("A new thickener"),
        MaterialKind.Method => Say("A new method"),
        MaterialKind.Specification => Say("A new specification"),
        MaterialKind.Instrument => Say("A new instrument"),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "not a kind"),
    };

    /// <summary>The kind that begins so, in words or by its name in files; null for none.</summary>
    public static string? Find(string text) => text.Length == 0
        ? null
        : MaterialKind.All.FirstOrDefault(k => Of(k).StartsWith(text, StringComparison.OrdinalIgnoreCase))
            ?? MaterialKind.All.FirstOrDefault(k => k.StartsWith(text, StringComparison.OrdinalIgnoreCase));
}
