using Viscolog.Feeds;

namespace Viscolog.Cli.Json;

/// <summary>
/// What an instrument said, a line of JSON: the values by their columns, or what was not understood, or how the wire stands.
/// </summary>
internal sealed record ListenAnswer
{
    public string Schema { get; init; } = "viscolog.listen/1";

    public required string From { get; init; }

    public DateTimeOffset? At { get; init; }

    /// <summary>The values by column.</summary>
    public IReadOnlyDictionary<string, double>? Values { get; init; }

    public bool? Stable { get; init; }

    /// <summary>What became of it in the log; null where nothing is logged.</summary>
    public string? Logged { get; init; }

    /// <summary>A line that was not understood, harmless to show.</summary>
    public string? Misread { get; init; }

    /// <summary>How many were not understood so far.</summary>
    public long? MisreadCount { get; init; }

    public string? State { get; init; }

    public string? Words { get; init; }

    public static ListenAnswer Of(FeedEvent told) => told switch
    {
        FeedEvent.Understood u => new()
        {
            From = u.From,
            At = u.At,
            Values = u.Line.Values.ToDictionary(v => v.Column.Name, v => v.Value, StringComparer.Ordinal),
            Stable = u.Line.IsStable,
        },
        FeedEvent.Misread m => new() { From = m.From, Misread = m.Line, Words = m.Reason, MisreadCount = m.Count },
        FeedEvent.Raw r => new() { From = r.From, Misread = r.Line },
        FeedEvent.Told t => new() { From = t.From, State = t.State.ToString().ToLowerInvariant(), Words = t.Words },
        _ => throw new ArgumentOutOfRangeException(nameof(told), told, "not a case of the closed set"),
    };
}
