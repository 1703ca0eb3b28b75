using System.Globalization;
using Viscolog.Core.Practice;
using Viscolog.Plots;
using Viscolog.Plots.Oxy;
using Viscolog.Wording;

namespace Viscolog.Reports;

/// <summary>A page for a class: players on one practice pot, what came of their habits, and why over-dosing is a dead end.</summary>
internal static class PracticeHandout
{
    /// <summary>The handout.</summary>
    /// <param name="players">From one to three, all on the same pot.</param>
    /// <param name="issued">The day.</param>
    public static Paper Of(IReadOnlyList<NamedPath> players, DateOnly issued)
    {
        var game = players[0].Path.Session.Game;
        var taught = players.FirstOrDefault(p => p.Path.Player == PracticePlayer.Person) ?? players.MaxBy(p => p.Path.Score.Wasted.Grams)!;
        return new(Say("Practice handout"), PracticeWords.Title(game), issued)
        {
            Subtitle = Say($"{PracticeWords.Facts(game)} · target {AdviceWords.Band(game.Band)}"),
            Blocks =
            [
                new Block.Drawing(
                    SvgPicture.Of(PictureFile.Svg(PracticePlot.Of(players), PictureFile.HalfHeight)),
                    Say("Filled: what was read. Open: the body that the pot settles at. Where the two differ, the reading came too "
                        + "early.")),
                Scores(players),
                .. players.Select(Player),
                new Block.Heading(Say("Why over-dosing is a dead end")),
                new Block.Points([.. PracticeWords.Lesson(OverdoseLesson.Of(taught.Path), Name(taught))]),
            ],
            Foot = Say($"An invented pot: 'viscolog practice demo --pot {game.Difficulty.Name} "
                + $"--seed {game.Seed}' plays it again. {PracticeWords.Truth(taught.Path.Truth)} At a real pot the safety data sheet and "
                + $"local rules decide."),
        };
    }

    private static Block.Grid Scores(IReadOnlyList<NamedPath> players) => new(
        [
            new(Say("player")), new(Say("ended", "column")),
            .. GridColumn.Numbers(
                Say("doses"), Say("readings"), Say("waits"), Say("over at dose"), Say("poured g"), Say("wasted g"),
                Say("base to save it, g"), Say("time")),
        ],
        [.. players.Select(Row)]);

    private static GridRow Row(NamedPath player)
    {
        var score = player.Path.Score;
        return GridRow.Of(
            player.Name,
            PracticeWords.Ended(score.Verdict),
            Text(score.Doses),
            Text(score.Readings),
            Text(score.Waits),
            score.WentOverAt is { } over ? Text(over) : "–",
            score.Poured.Grams.ToString("0.00", Numbers),
            score.Wasted.Grams.ToString("0.00", Numbers),
            score.BaseToSave.Grams.ToString("0", Numbers),
            PracticeWords.Clock(score.Time));
    }

    private static Block.Prose Player(NamedPath player)
    {
        var path = player.Path;
        return new($"{Sentence(PracticeWords.Habit(path.Player))} "
            + $"{(PracticeWords.WhyOver(path) is { } why ? why + " " : "")}{PracticeWords.Ending(path)}")
        { Lead = Name(player) };
    }

    private static string Name(NamedPath player)
        => player.Name.Length == 0 ? "?" : char.ToUpper(player.Name[0], CultureInfo.InvariantCulture) + player.Name[1..];

    private static string Sentence(string text) => char.ToUpper(text[0], CultureInfo.InvariantCulture) + text[1..] + ".";

    private static string Text(int number) => number.ToString(Numbers);
}
