namespace Viscolog.RunFiles;

/// <summary>What an exported run's file is called: the same for the same run, from whichever bench it comes.</summary>
internal static class RunFileName
{
    private const int Longest = 60;

    public static string Of(RunFile file)
    {
        var name = new string([.. (file.Run.Name ?? "run").Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-')]);
        var plain = string.Join('-', name.Split('-', StringSplitOptions.RemoveEmptyEntries));
        // The end of a UUID tells runs apart, its beginning is the time.
        return $"{(plain.Length > Longest ? plain[..Longest] : plain)}-{file.Id.ToString()![^8..]}.csv".TrimStart('-');
    }
}
