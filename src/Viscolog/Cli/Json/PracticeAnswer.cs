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

    /// <summary>What was in the pot.</summary>
    internal sealed record Secret(
        string Family, double NeededPct, double InBandFromPct, double? OverFromPct, double? FlatFromPct, double? PeakPct,
        double TimeConstantS);

    /// <summary>A player and what came of it.</summary>
    internal sealed record Player
    {
        public required string Name { get; init; }
        public required string Verdict { get; init; }
        public required int Doses { get; init; }
        public required int Readings { get; init; }
        public required int Waits { get; init; }
        public required int EarlyDoses { get; init; }
        public required int? OverAtDose { get; init; }
        public required double BodyMpas { get; init; }
        public required double PouredG { get; init; }
        public required double WastedG { get; init; }
        public required double BaseAddedG { get; init; }
        public required double BaseToSaveG { get; init; }
        public required double TimeS { get; init; }
        public required string? WhyOver { get; init; }
        public required IReadOnlyList<Step> Steps { get; init; }

        public static Player Of(NamedPath named)
        {
            var (path, score) = (named.Path, named.Path.Score);
            return new()
            {
                Name = named.Name,
                Verdict = PracticeWords.Verdict(score.Verdict),
                Doses = score.Doses,
                Readings = score.Readings,
                Waits = score.Waits,
                EarlyDoses = score.EarlyDoses,
                OverAtDose = score.WentOverAt,
                BodyMpas = Rounded.Four(score.Body.MilliPascalSeconds),
                PouredG = Rounded.Grams(score.Poured),
                WastedG = Rounded.Grams(score.Wasted),
                BaseAddedG = Rounded.Grams(score.Base),
                BaseToSaveG = Rounded.Grams(score.BaseToSave),
                TimeS = Math.Round(score.Time.TotalSeconds),
                WhyOver = PracticeWords.WhyOver(path),
                Steps = [.. Enumerable.Range(0, path.Steps.Length).Select(i => Step.Of(path, i))],
            };
        }
    }

    /// <summary>One step.</summary>
    internal sealed record Step
    {
        public required double PouredG { get; init; }
        public required double BaseAddedG { get; init; }
        public required double DosePct { get; init; }
        public required double? WaitS { get; init; }
        public required double? ReadMpas { get; init; }
        public required double SettlesAtMpas { get; init; }
        public required bool Over { get; init; }
        public required string Text { get; init; }

        public static Step Of(PracticePath path, int place)
        {
            var (step, line) = (path.Steps[place], path.Steps[place].Line);
            return new()
            {
                PouredG = Rounded.Grams(line.Poured),
                BaseAddedG = Rounded.Grams(line.Base),
                DosePct = Percent(line.Dose),
                WaitS = line.Stood?.TotalSeconds,
                ReadMpas = line.Shown is { } shown ? Rounded.Four(shown.MilliPascalSeconds) : null,
                SettlesAtMpas = Rounded.Four(step.Settled.MilliPascalSeconds),
                Over = step.IsOver,
                Text = PracticeWords.Sentence(path, place),
            };
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
    internal sealed record Moment
    {
        public required int Number { get; init; }
        public required double DosePct { get; init; }
        public required double DoseAfterPct { get; init; }
        public required string Known { get; init; }
        public required AdviceAnswer? Advice { get; init; }
        public required string? NoAdvice { get; init; }
        public required string Done { get; init; }
        public required string? Compared { get; init; }

        public static Moment Of(ReplayMoment moment) => new()
        {
            Number = moment.Number,
            DosePct = Math.Round(moment.DoseBefore.Percent, 3),
            DoseAfterPct = Math.Round(moment.DoseAfter.Percent, 3),
            Known = ReplayWords.Known(moment),
            Advice = moment.Advice is { } advice ? AdviceAnswer.Of(null, advice, []) : null,
            NoAdvice = moment.Advice is null ? ReplayWords.Advised(moment) : null,
            Done = ReplayWords.Done(moment),
            Compared = moment.Match is { } match and not ReplayMatch.Ended ? Name(match) : null,
        };

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
