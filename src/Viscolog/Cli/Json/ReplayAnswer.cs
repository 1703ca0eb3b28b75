using System.Text.Json.Serialization;
using Viscolog.Core.Practice;
using Viscolog.Wording;

namespace Viscolog.Cli.Json;

/// <summary>A run gone through reading by reading, as <c>viscolog.practice-replay/1</c>.</summary>
internal sealed record ReplayAnswer(string? Run, IReadOnlyList<ReplayAnswer.Moment> Readings, IReadOnlyList<string> Warnings)
{
    [JsonPropertyOrder(-1)]
    public string Schema { get; } = "viscolog.practice-replay/1";

    /// <summary>One moment.</summary>
    internal sealed record Moment(int Number, double DosePct, double DoseAfterPct, string Known, AdviceAnswer? Advice, string? NoAdvice, string Done, string? Compared)
    {
        public static Moment Of(ReplayMoment moment) => new(
            moment.Number,
            Math.Round(moment.DoseBefore.Percent, 3),
            Math.Round(moment.DoseAfter.Percent, 3),
            ReplayWords.Known(moment),
            moment.Advice is { } advice ? AdviceAnswer.Of(null, advice, []) : null,
            moment.Advice is null ? ReplayWords.Advised(moment) : null,
            ReplayWords.Done(moment),
            moment.Match is { } match and not ReplayMatch.Ended ? Name(match) : null);

        private static string Name(ReplayMatch match) => match switch
        {
            ReplayMatch.AsAdvised => "as-advised",
            ReplayMatch.More => "more",
            ReplayMatch.Less => "less",
            ReplayMatch.DosedAgainstAdvice => "dosed-against-advice",
            _ => "otherwise",
        };
    }
}
