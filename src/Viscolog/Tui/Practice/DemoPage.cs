using Viscolog.Core.Advising;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Viscolog.Plots;
using Viscolog.Plots.Characters;
using Viscolog.Text;
using Viscolog.Tui.Pattern;
using Viscolog.Wording;

namespace Viscolog.Tui.Practice;

/// <summary>What the demonstration shows.</summary>
internal static class DemoPage
{
    public static Page Of(DemoState state, Canvas canvas) => Page.Of(canvas, Say("the demonstration"), page => Draw(page, state));

    private static void Draw(Page page, DemoState state)
    {
        page.Add(" " + PracticeWords.Facts(state.Game, withName: true), Tone.Strong);
        if (state.Played is not { } played)
        {
            page.Add(" " + Say("the three are playing"), Tone.Dim);
        }
        else if (state.ShowsLesson)
        {
            Lesson(page, state, played);
        }
        else
        {
            Players(page, state, played);
        }

        page.Foot(state.Said, DemoScreen.Keys);
    }

    private static void Players(Page page, DemoState state, Demonstration played)
    {
        var ends = state.IsAtEnd;
        page.Add(
            new Piece(" " + (ends ? Say("End") : Say($"Step {state.Step} of {played.StepCount - 1}"))),
            new Piece(state.Due is null ? "" : " · " + Say("running", "demonstration"), Tone.Dim));
        var column = (page.Width - 4) / 3;
        page.Add([.. played.Paths
            .Select(p => new Piece(
                " " + page.Fit(
                    column < 40 ? PracticeWords.Name(p.Player) : $"{PracticeWords.Name(p.Player)}: {PracticeWords.Habit(p.Player)}",
                    column),
                Tone.Strong))]);
        var texts = played.Paths.Select(p => Paragraph.Of(Text(p, state.Step), column).ToList()).ToList();
        var chartRows = page.Height - 5 - Math.Min(9, texts.Max(t => t.Count));
        var hasChart = page.Width >= 80 && chartRows >= TerminalChart.LeastHeight;
        var rows = hasChart ? page.Height - 5 - chartRows : page.Height - 5;
        for (var i = 0; i < rows; i++)
        {
            page.Add([.. texts.Zip(played.Paths)
                .Select(t => new Piece(" " + page.Fit(i < t.First.Count ? t.First[i] : "", column), ToneOf(t.Second, state.Step)))]);
        }

        if (hasChart)
        {
            var end = PracticePictures.End(played.Paths);
            foreach (var line in TerminalChart.Draw(
                DosePlot.Of([.. played.Paths.Select(p => Picture(p, end, state.Step, ends))]),
                page.Width - 2,
                chartRows,
                page.IsAscii))
            {
                page.Add(" " + line);
            }
        }
    }

    private static string Text(PracticePath path, int step)
        => step < path.Steps.Length ? PracticeWords.Sentence(path, step) : PracticeWords.Ending(path);

    private static Tone ToneOf(PracticePath path, int step)
    {
        var over = path.Steps[Math.Min(step, path.Steps.Length - 1)].IsOver;
        return over ? Tone.Bad : step >= path.Steps.Length && path.Score.Verdict == PracticeVerdict.InBand ? Tone.Good : Tone.Plain;
    }

    /// <summary>What was read up to a step; the hidden curve and the settled values only at the end.</summary>
    private static RunPicture Picture(PracticePath path, Dose end, int step, bool ends)
    {
        var whole = PracticePictures.Of(path, PracticeWords.Name(path.Player), end);
        return ends
            ? whole
            : whole with { Curve = [], Limit = null, Steps = [], Readings = [.. whole.Readings.Where(r => r.Step <= step)] };
    }

    private static void Lesson(Page page, DemoState state, Demonstration played)
    {
        var lines = PracticeWords.LessonOf(played).SelectMany(t => Paragraph.Of(t, page.Width - 3).Append("")).ToList();
        var room = page.Height - 3;
        foreach (var line in lines.Skip(state.Above.First(lines.Count, room)).Take(room))
        {
            page.Add(" " + line);
        }
    }
}
