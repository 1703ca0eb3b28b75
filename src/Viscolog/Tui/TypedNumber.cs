using Viscolog.RunFiles;

namespace Viscolog.Tui;

/// <summary>Numbers as people type them: a decimal point or a decimal comma, nothing else.</summary>
internal static class TypedNumber
{
    private static readonly FileNumbers Points = new(',');

    /// <summary>The number; null with the reason where it is none or out of range.</summary>
    public static double? Read(string text, NumberRange range, out string? error)
    {
        var plain = text.Trim();
        if (plain.Count(c => c is ',' or '.') > 1 || !Points.TryParse(plain.Replace(',', '.'), range.Shift, out var value))
        {
            error = $"read '{plain}', expected {range.Words(null)}, such as 1450 or 0.84";
            return null;
        }

        error = range.Allows(value) ? null : $"read '{plain}', expected {range.Words(value)}";
        return error is null ? value : null;
    }
}
