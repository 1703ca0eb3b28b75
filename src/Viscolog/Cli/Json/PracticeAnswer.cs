using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Viscolog.PracticeFiles;
using Viscolog.Wording;

namespace Viscolog.Cli.Json;

/// <summary>A practice pot and who played it, as <c>viscolog.practice/1</c>.</summary>
internal sealed record PracticeAnswer(
    string Pot, int Seed, double TargetMpas, PracticeAnswer.Secret Hidden, IReadOnlyList<PracticeAnswer.Player> Players,
    IReadOnlyList<string> Lesson) : Answer("viscolog.practice/1")
{
    /// <summary>The answer on players of one pot.</summary>
    public static PracticeAnswer Of(IReadOnlyList<NamedPath> players, PracticePath taught)
    {
        var (game, truth) = (taught.Session.Game, taught.Truth);
        return new(
            game.Difficulty.Name,
            game.Seed,
            game.Band.Aim.MilliPascalSeconds,
            new(
                truth.Family, Percent(truth.Needed), Percent(truth.InBandFrom), Percent(truth.OverFrom), Percent(truth.FlatFrom),
                Percent(truth.Peak), truth.TimeConstant.TotalSeconds),
            [.. players.Select(Player.Of)],
            [.. PracticeWords.Lesson(OverdoseLesson.Of(taught))]);
    }

    private static double Percent(Dose dose) => Math.Round(dose.Percent, 3);

    private static double? Percent(Dose? dose) => dose is { } known ? Percent(known) : null;

    /// <summary>What hid in the pot.</summary>
    internal sealed record Secret(
        string Family, double NeededPct, double InBandFromPct, double? OverFromPct, double? FlatFromPct, double? PeakPct,
        double TimeConstantS);

    /// <summary>A player and what came of it.</summary>
    internal sealed record Player(
        string Name, string Verdict, int Doses, int Readings, int Waits, int EarlyDoses, int? OverAtDose, double BodyMpas, double PouredG,
        double WastedG, double BaseAddedG, double BaseToSaveG, double TimeS, string? WhyOver, IReadOnlyList<Step> Steps)
    {
        public static Player Of(NamedPath named)
        {
            var (path, score) = (named.Path, named.Path.Score);
            return new(
                named.Name,
                PracticeWords.Verdict(score.Verdict),
                score.Doses,
                score.Readings,
                score.Waits,
                score.EarlyDoses,
                score.WentOverAt,
                Rounded.Four(score.Body.MilliPascalSeconds),
                Rounded.Grams(score.Poured),
                Rounded.Grams(score.Wasted),
                Rounded.Grams(score.Base),
                Rounded.Grams(score.BaseToSave),
                Math.Round(score.Time.TotalSeconds),
                PracticeWords.WhyOver(path),
                [.. Enumerable.Range(0, path.Steps.Length).Select(i => Step.Of(path, i))]);
        }
    }

    /// <summary>One step.</summary>
    internal sealed record Step(
        double PouredG, double BaseAddedG, double DosePct, double? WaitS, double? ReadMpas, double SettlesAtMpas, bool Over, string Text)
    {
        public static Step Of(PracticePath path, int place)
        {
            var (step, line) = (path.Steps[place], path.Steps[place].Line);
            return new(
                Rounded.Grams(line.Poured),
                Rounded.Grams(line.Base),
                Percent(line.Dose),
                line.Stood?.TotalSeconds,
                line.Shown is { } shown ? Rounded.Four(shown.MilliPascalSeconds) : null,
                Rounded.Four(step.Settled.MilliPascalSeconds),
                step.IsOver,
                PracticeWords.Sentence(path, place));
        }
    }
}

/// <summary>A class's games, as <c>viscolog.practice-scores/1</c>.</summary>
internal sealed record PracticeScoresAnswer(
    IReadOnlyList<PracticeResult> Games, IReadOnlyList<string> Warnings) : Answer("viscolog.practice-scores/1");

/// <summary>A run gone through reading by reading, as <c>viscolog.practice-replay/1</c>.</summary>
internal sealed record ReplayAnswer(
    string? Run, IReadOnlyList<ReplayAnswer.Moment> Readings, IReadOnlyList<string> Warnings) : Answer("viscolog.practice-replay/1")
{
    /// <summary>One moment.</summary>
    internal sealed record Moment(
        int Number, double DosePct, double DoseAfterPct, string Known, AdviceAnswer? Advice, string? NoAdvice, string Done,
        string? Compared)
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
