using Viscolog.Store;

namespace Viscolog.Cli;

/// <summary>What an exported run's file is called: the same for the same run, from whichever bench it comes.</summary>
internal static class ExportName
{
    private const int Longest = 60;

    public static string Of(LoggedRun logged)
    {
        var name = new string([.. (logged.File.Run.Name ?? "run").Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-')]);
        var plain = string.Join('-', name.Split('-', StringSplitOptions.RemoveEmptyEntries));
        // The end of a UUID tells runs apart, its beginning is the time.
        return $"{(plain.Length > Longest ? plain[..Longest] : plain)}-{logged.File.Id.ToString()![^8..]}.csv".TrimStart('-');
    }
}
