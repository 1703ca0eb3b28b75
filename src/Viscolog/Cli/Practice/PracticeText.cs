using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Core.Practice;
using Viscolog.Output;
using Viscolog.Plots;
using Viscolog.Plots.Characters;
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
        Lines(terminal, PracticeWords.Pot(game), "", terminal.Width);
        terminal.Line(game.Difficulty.About);
    }

    /// <summary>One step of the three players.</summary>
    public static void Step(CallOutput terminal, Demonstration demonstration, int place)
    {
        terminal.Line();
        terminal.Emphasized(FormattableString.Invariant($"Step {place}"));
        foreach (var path in demonstration.Paths)
        {
            if (place < path.Steps.Length)
            {
                Lines(terminal, PracticeWords.Sentence(path, place), PracticeWords.Name(path.Player), terminal.Width);
            }
            else if (place == path.Steps.Length)
            {
                Lines(terminal, PracticeWords.Ending(path), PracticeWords.Name(path.Player), terminal.Width);
            }
        }
    }

    /// <summary>What hid in the pot, who did how, and why over-dosing is a dead end.</summary>
    public static void Reveal(CallOutput terminal, IReadOnlyList<NamedPath> paths, OverdoseLesson lesson, string whose)
    {
        terminal.Line();
        terminal.Emphasized("What hid in the pot");
        Lines(terminal, PracticeWords.Truth(lesson.Truth), "", terminal.Width);
        terminal.Line();
        var end = PracticePictures.End(paths.Select(p => p.Path));
        foreach (var line in TerminalChart.Draw(DosePlot.Of([.. paths.Select(p => PracticePictures.Of(p.Path, p.Name, end))]), Math.Min(terminal.Width, 100), 22, terminal.IsAscii))
        {
            terminal.Line(line);
        }

        Outcome(terminal, paths);
        terminal.Line();
        terminal.Emphasized("Why over-dosing is a dead end");
        foreach (var sentence in PracticeWords.Lesson(lesson, whose))
        {
            Lines(terminal, sentence, "-", terminal.Width, 2);
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
                Lines(terminal, why, name, terminal.Width);
            }
        }
    }

    private static void Table(CallOutput terminal, IEnumerable<NamedPath> paths)
    {
        var table = new TextTable("player", "ended", "doses", "reads", "waits", "over at", "wasted g", "to save g", "time");
        foreach (var (name, path) in paths)
        {
            var score = path.Score;
            table.Add(
                name,
                PracticeWords.Verdict(score.Verdict),
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
    public static ExitCode Write(Invocation call, IReadOnlyList<NamedPath> players, string? path, bool force)
    {
        if (path is null)
        {
            return ExitCode.Done;
        }

        switch (PracticeFile.Write(players, path, force, PaperOptions.Today(call)))
        {
            case FileOutcome.Refused refused:
                return call.Refuse(refused.Reason);
            case FileOutcome.Written when call.Json:
                return ExitCode.Done;
            case FileOutcome.Written written:
                call.Terminal.Line();
                call.Terminal.Line($"written: {written.Path}");
                return ExitCode.Done;
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }

    /// <summary>A text behind a name, broken to the width.</summary>
    public static void Lines(CallOutput terminal, string text, string name, int width, int columns = NameColumns)
    {
        var indent = name.Length == 0 ? 0 : columns;
        foreach (var line in Paragraph.Of(text, width - indent - 2))
        {
            terminal.Line((indent == 0 ? line : $"  {name.PadRight(indent)}{line}").TrimEnd());
            name = indent == 0 ? "" : new string(' ', 1);
        }
    }

    private static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Grams(double grams) => grams.ToString("0.00", CultureInfo.InvariantCulture);
}
