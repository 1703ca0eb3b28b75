using Viscolog.Cli.Calls;
using Viscolog.Core.Practice;
using Viscolog.Plots;
using Viscolog.Reports;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Cli.Practice;

/// <summary>Practice games as a person reads them.</summary>
internal static class PracticeText
{
    private const int NameColumns = 11;

    /// <summary>The head of a game.</summary>
    public static void Head(CallOutput terminal, PracticeGame game)
    {
        terminal.Wrapped(PracticeWords.Pot(game), margin: 2);
        terminal.Line(PracticeWords.About(game.Difficulty));
    }

    /// <summary>One step of the three players.</summary>
    public static void Step(CallOutput terminal, Demonstration demonstration, int place)
    {
        terminal.Line();
        terminal.Emphasized(Say($"Step {place}"));
        foreach (var path in demonstration.Paths)
        {
            if (place < path.Steps.Length)
            {
                Named(terminal, PracticeWords.Sentence(path, place), PracticeWords.Name(path.Player));
            }
            else if (place == path.Steps.Length)
            {
                Named(terminal, PracticeWords.Ending(path), PracticeWords.Name(path.Player));
            }
        }
    }

    /// <summary>What was in the pot, who did how, and why over-dosing is a dead end.</summary>
    public static void Reveal(CallOutput terminal, IReadOnlyList<NamedPath> paths, OverdoseLesson lesson, string whose)
    {
        terminal.Line();
        terminal.Emphasized(Say("What was in the pot"));
        terminal.Wrapped(PracticeWords.Truth(lesson.Truth), margin: 2);
        terminal.Line();
        var end = PracticePictures.End(paths.Select(p => p.Path));
        terminal.Chart(DosePlot.Of([.. paths.Select(p => PracticePictures.Of(p.Path, p.Name, end))]), Math.Min(terminal.Width, 100), 22);

        Outcome(terminal, paths);
        terminal.Line();
        terminal.Emphasized(Say("Why over-dosing is a dead end"));
        foreach (var sentence in PracticeWords.Lesson(lesson, whose))
        {
            terminal.Row("-", sentence, 4);
        }
    }

    /// <summary>The scores side by side, and where players went over.</summary>
    public static void Outcome(CallOutput terminal, IReadOnlyList<NamedPath> paths)
    {
        terminal.Line();
        Table(terminal, paths);
        terminal.Line();
        foreach (var (name, path) in paths)
        {
            if (PracticeWords.WhyOver(path) is { } why)
            {
                Named(terminal, why, name);
            }
        }
    }

    private static void Table(CallOutput terminal, IEnumerable<NamedPath> paths)
    {
        var table = new TextTable(
            Say("player", "scores"),
            Say("ended", "scores"),
            Say("doses", "scores"),
            Say("reads", "scores"),
            Say("waits", "scores"),
            Say("over at", "scores"),
            Say("wasted g", "scores"),
            Say("to save g", "scores"),
            Say("time", "scores"));
        foreach (var (name, path) in paths)
        {
            var score = path.Score;
            table.Add(
                name,
                PracticeWords.Ended(score.Verdict),
                Count(score.Doses),
                Count(score.Readings),
                Count(score.Waits),
                score.WentOverAt is { } at ? Count(at) : "–",
                Grams(score.Wasted.Grams),
                Grams(score.BaseToSave.Grams),
                PracticeWords.Clock(score.Time));
        }

        terminal.Table(table);
    }

    /// <summary>Writes a picture or a handout where one was asked for.</summary>
    public static ExitCode Write(Invocation call, IReadOnlyList<NamedPath> players, OutputOptions output)
    {
        var written = output.Write(call, (path, force) => PracticeFile.Write(players, path, force, call.Today));
        if (written is { Reason: { } reason })
        {
            return call.Refuse(reason);
        }

        if (written is not null && !call.Json)
        {
            call.Terminal.Line();
            call.Terminal.Written(written.Made);
        }

        return ExitCode.Done;
    }

    /// <summary>A text behind a name, broken to the width.</summary>
    public static void Named(CallOutput terminal, string text, string name) => terminal.Row(name, text, NameColumns + 2);

    private static string Count(int number) => number.ToString(Numbers);

    private static string Grams(double grams) => grams.ToString("0.00", Numbers);
}
