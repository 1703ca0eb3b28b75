using Viscolog.Core.Advising;

namespace Viscolog.Tui.Bench;

/// <summary>The one call into Core that a question of the bench screen makes.</summary>
internal static class BenchAdvisor
{
    public static BenchAdvice Of(BenchEffect.Advise ask)
    {
        var outcome = Study.Of(new(ask.Run) { Risk = ask.Risk, History = ask.Earlier });
        var refused = outcome.Advice is not null ? null
            : ask.Run.Target is null ? Say("No target: F8 sets one, and advice begins.")
            : Wording.AdviceWords.Refusal(outcome);
        var study = (outcome as StudyOutcome.Made)?.Study;
        return new(outcome.Advice, refused, study is { IsDrawn: true } ? study.Picture : null) { Study = study };
    }
}

/// <summary>What was last advised.</summary>
/// <param name="Advice">The advice; null where there is none.</param>
/// <param name="Refused">Why there is none; null where there is one.</param>
/// <param name="Picture">What the chart shows; null where nothing can be drawn.</param>
internal sealed record BenchAdvice(Advice? Advice, string? Refused, RunPicture? Picture)
{
    /// <summary>What it rests on, for the next reading to be held against; null where there is none.</summary>
    public Study? Study { get; init; }
}
