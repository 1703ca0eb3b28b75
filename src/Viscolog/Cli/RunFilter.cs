using Viscolog.Store;

namespace Viscolog.Cli;

/// <summary>Which runs a list shows; null lets all through.</summary>
internal sealed record RunFilter(string? Base, string? Thickener, string? Text, DateOnly? Since, DateOnly? Until)
{
    public bool IsEmpty => this is { Base: null, Thickener: null, Text: null, Since: null, Until: null };

    public bool Takes(RunSummary run)
    {
        var day = DateOnly.FromDateTime(run.Last.Date);
        return (Base is null || Same(run.Base, Base))
            && (Thickener is null || run.Thickeners.Any(t => Same(t, Thickener)))
            && (Text is null || new[] { run.Name, run.Base, run.Lot }.Concat(run.Thickeners).Any(t => t?.Contains(Text, StringComparison.OrdinalIgnoreCase) == true))
            && (Since is null || day >= Since)
            && (Until is null || day <= Until);
    }

    private static bool Same(string? left, string right) => string.Equals(left, right, StringComparison.OrdinalIgnoreCase);
}
