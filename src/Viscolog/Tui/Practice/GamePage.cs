using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Practice;
using Viscolog.Plots;
using Viscolog.Plots.Characters;
using Viscolog.Text;
using Viscolog.Tui.Pattern;
using Viscolog.Wording;

namespace Viscolog.Tui.Practice;

/// <summary>What a practice game shows, but for the field that is typed into.</summary>
internal static class GamePage
{
    private const string Rich = "▁▂▃▄▅▆▇█";
    private const string Plain = "_.-~=+*#";

    /// <summary>Where the field is; nowhere where the game has ended, or is not shown.</summary>
    public static ImmutableArray<(int X, int Width)> Fields(GameState state, int width, int height)
        => state.Path is not null || width < Page.LeastWidth || height < Page.LeastHeight ? [] : [(8, 8)];

    public static Page Of(GameState state, Canvas canvas) => Page.Of(canvas, Say("practice"), page => Draw(page, state));

    private static void Draw(Page page, GameState state)
    {
        page.Add(" " + PracticeWords.Facts(state.Session.Game, withName: true), Tone.Strong);
        if (state.Path is { } path)
        {
            Ended(page, state, path);
        }
        else
        {
            Playing(page, state);
        }
    }

    private static void Playing(Page page, GameState state)
    {
        var session = state.Session;
        page.Add("");
        var reading = state.Stirring is { } stirred ? Say($"stirring {Clock(stirred)}   (F3 ends it)")
            : session.NeedsStirring ? Say("not stirred yet   (F3 starts stirring)")
            : session.Showing is { } shown ? Say($"SHOWS {Shown.Body(shown)}") : "";
        page.Add(new Piece("   " + reading, Tone.Strong), new Piece("   ·   " + Say($"target {AdviceWords.Band(session.Game.Band)}")));
        var standing = session.Standing is { } stood ? Say($"standing {Clock(stood)}") : "";
        page.Add(new Piece("   " + Strip(state, page.Width - 34, page.IsAscii) + " "), new Piece(standing));
        var signs = session.Signs.Length == 0
            ? "" : " · " + Say($"seen: {string.Join(Say(" and "), session.Signs.Select(PracticeWords.Sign))}");
        var times = page.IsAscii ? "x" : "×";
        page.Add(
            new Piece("   " + Say($"dose {Shown.Dose(session.DoseNow)} · game time {Clock(session.Elapsed)} · time {times}{state.Speed}")),
            new Piece(signs, Tone.Caution));
        page.Add("");
        Middle(page, session, page.Height - 3 - page.Lines.Count);
        page.FillTo(page.Height - 3);
        page.Add(state.Error is { } error ? new Piece(" ! " + error, Tone.Bad) : new Piece(" " + state.Said, Tone.Dim));
        page.Add(" " + Say("grams           g   Enter pours; when empty, it reads"));
        page.Add(GameScreen.Playing.Footer(page.Width, page.IsAscii), Tone.Dim);
    }

    /// <summary>The way of the reading since the last stirring, the latest at the right.</summary>
    private static string Strip(GameState state, int columns, bool isAscii)
    {
        var marks = isAscii ? Plain : Rich;
        var all = state.Trace;
        if (all.IsEmpty)
        {
            return "";
        }

        var shown = all.Length > columns ? all[^columns..] : all;
        var (low, high) = (all.Min(), Math.Max(all.Max(), all.Min() + 0.2));
        return string.Concat(shown.Select(v => marks[(int)Math.Clamp((v - low) / (high - low) * marks.Length, 0, marks.Length - 1)]));
    }

    private static void Middle(Page page, PracticeSession session, int rows)
    {
        var chart = page.Width >= 80 && rows >= TerminalChart.LeastHeight && !session.Lines.IsEmpty;
        var right = chart ? Math.Max(TerminalChart.LeastWidth + 1, page.Width - 50) : 0;
        var left = page.Width - right - 1;
        var lines = Table(page, session).ToList();
        var drawn = chart ? TerminalChart.Draw(DosePlot.Of(Readings(session)), right - 1, rows, page.IsAscii) : [];
        var first = Math.Max(1, lines.Count - rows + 1);
        for (var i = 0; i < rows; i++)
        {
            var text = i == 0 ? lines[0] : first + i - 1 < lines.Count ? lines[first + i - 1] : "";
            page.Add(new Piece(" " + page.Fit(text, left), i == 0 ? Tone.Dim : Tone.Plain), new Piece(i < drawn.Count ? drawn[i] : ""));
        }
    }

    private static IEnumerable<string> Table(Page page, PracticeSession session)
    {
        yield return page.Fit(Say("dose %", "game"), 7, true) + page.Fit(Say("in g", "game"), 8, true)
            + page.Fit(Say("wait s", "game"), 7, true) + page.Fit("mPa·s", 10, true);
        foreach (var line in session.Lines)
        {
            var went = line.Base.Grams > 0
                ? Say($"base {Shown.Number(line.Base.Grams)}", "game")
                : line.Poured.Grams > 0
                ? line.Poured.Grams.ToString("0.00", Numbers)
                : "";
            yield return page.Fit(line.Dose.Percent.ToString("0.00", Numbers), 7, true) + page.Fit(went, 8, true)
                + page.Fit(line.Stood?.TotalSeconds.ToString("0", Numbers) ?? "", 7, true)
                + page.Fit(line.Shown is { } shown ? Shown.Number(shown.MilliPascalSeconds) : "", 10, true);
        }
    }

    /// <summary>What was read so far; nothing of the truth.</summary>
    private static RunPicture Readings(PracticeSession session)
        => new(Say("read so far"), session.Run.Thickeners[0].Name, session.Run.ReferenceTemperatureInForce)
        {
            Target = session.Game.Band,
            Readings = [.. session.Lines.Where(l => l.Shown is not null)
                .Select(l => new PicturedReading(l.Number, l.Dose, l.Stood, l.Shown!.Value, l.Shown!.Value, 0, Doubted: false))],
        };

    private static void Ended(Page page, GameState state, PracticePath path)
    {
        var tone = path.Score.Verdict switch { PracticeVerdict.InBand => Tone.Good, PracticeVerdict.Over => Tone.Bad, _ => Tone.Caution };
        var rows = page.Height - 4;
        var lines = state.View switch
        {
            GameView.Curve => Curve(page, state, path, rows),
            GameView.Why => Why(state, path, page.Width - 3),
            _ => Steps(path, page.Width - 3),
        };
        foreach (var line in Paragraph.Of(PracticeWords.Ending(path), page.Width - 2).Take(page.Width < 80 ? 3 : 2))
        {
            page.Add(" " + line, tone);
        }

        var room = (page.Height - 2) - page.Lines.Count;
        var above = state.Above.First(lines.Length, room);
        foreach (var line in lines.Skip(above).Take(room))
        {
            page.Add(" " + line);
        }

        string[] said = [state.Said, above + room < lines.Length ? Say("Down: more") : ""];
        page.Foot(string.Join(" · ", said.Where(t => t.Length > 0)), GameScreen.Ended);
    }

    private static ImmutableArray<string> Curve(Page page, GameState state, PracticePath path, int rows)
    {
        var players = state.Players(path);
        var end = PracticePictures.End(players.Select(p => p.Path));
        var height = Math.Max(TerminalChart.LeastHeight, rows - 2);
        return [.. TerminalChart.Draw(
            DosePlot.Of([.. players.Select(p => PracticePictures.Of(p.Path, p.Name, end))]),
            page.Width - 2,
            height,
            page.IsAscii)];
    }

    private static ImmutableArray<string> Why(GameState state, PracticePath path, int width)
    {
        string?[] texts =
        [
            PracticeWords.WhyOver(path),
            state.Advised is { } advised
                ? Say($"Advised on the same pot: {PracticeWords.Ending(advised)}")
                : Say("The advised way is being worked out."),
            PracticeWords.Truth(path.Truth),
            .. PracticeWords.Lesson(OverdoseLesson.Of(path)),
        ];
        return [.. texts.OfType<string>().SelectMany(t => Paragraph.Of(t, width).Append(""))];
    }

    private static ImmutableArray<string> Steps(PracticePath path, int width)
        => [.. Enumerable.Range(0, path.Steps.Length)
            .SelectMany(i => Paragraph.Of(FormattableString.Invariant($"{i}  ") + PracticeWords.Sentence(path, i), width))];

    private static string Clock(TimeSpan span) => FormattableString.Invariant($"{(int)span.TotalMinutes:00}:{span.Seconds:00}");
}
