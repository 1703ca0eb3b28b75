namespace Viscolog.RunFiles;

/// <summary>What an exported run's file is called: the same for the same run, from whichever bench it comes.</summary>
internal static class RunFileName
{
    private const int Longest = 60;

    /// <summary>The end of a UUID tells runs apart, its beginning is the time.</summary>
    public static string Of(RunFile file) => $"{Letters(file.Run.Name ?? "run")}-{file.Id.ToString()![^8..]}.csv".TrimStart('-');

    /// <summary>A name as a file can have it on any system, without an ending.</summary>
    public static string Plain(string name) => Letters(name) is { Length: > 0 } letters ? letters : "run";

    private static string Letters(string name)
    {
        var letters = new string([.. name.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-')]);
        var plain = string.Join('-', letters.Split('-', StringSplitOptions.RemoveEmptyEntries));
        return plain.Length > Longest ? plain[..Longest] : plain;
    }
}
