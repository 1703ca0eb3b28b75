using System.Globalization;

namespace Viscolog.RunFiles;

/// <summary>Times in files: ISO 8601 with offset.</summary>
internal static class FileTime
{
    private static readonly string[] Formats =
    [
        "yyyy-MM-dd'T'HH:mmzzz", "yyyy-MM-dd'T'HH:mm:sszzz", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz",
    ];

    /// <summary>Parses a time; false where the date is wrong or the offset is missing.</summary>
    public static bool TryParse(string text, out DateTimeOffset time)
    {
        var offset = text.EndsWith('Z') ? text[..^1] + "+00:00" : text;
        return DateTimeOffset.TryParseExact(offset, Formats, CultureInfo.InvariantCulture, DateTimeStyles.None, out time);
    }

    /// <summary>The time to its last tick.</summary>
    public static string Show(DateTimeOffset time) => time.ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz", CultureInfo.InvariantCulture);
}
