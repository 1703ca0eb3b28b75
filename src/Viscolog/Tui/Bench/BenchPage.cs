using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Observing;
using Viscolog.Plots;
using Viscolog.Plots.Characters;
using Viscolog.Text;
using Viscolog.Tui.Pattern;
using Viscolog.Typing;
using Viscolog.Wording;

namespace Viscolog.Tui.Bench;

/// <summary>What the bench screen shows, but for the three fields that are typed into.</summary>
internal static class BenchPage
{
    /// <summary>From so many columns on the title says all in full.</summary>
    private const int WideTitle = 100;

    private const int ReadingWidth = 10;
    private const int WaitWidth = 6;

    /// <summary>The row of the fields.</summary>
    public static int EntryRow(int height) => height - 2;

    /// <summary>Where the fields begin, and how wide they are: reading, wait, note.</summary>
    public static ImmutableArray<(int X, int Width)> Fields(BenchState state, int width, int height)
    {
        if (width < Page.LeastWidth || height < Page.LeastHeight)
        {
            return [];
        }

        var (beforeReading, beforeWait, beforeNote) = Labels(state);
        var reading = PlainText.Columns(beforeReading);
        var wait = reading + ReadingWidth + PlainText.Columns(beforeWait);
        var note = wait + WaitWidth + PlainText.Columns(beforeNote);
        return [(reading, ReadingWidth), (wait, WaitWidth), (note, Math.Max(6, width - note - 1))];
    }

    public static Page Of(BenchState state, Canvas canvas) => Page.Of(canvas, Say("the bench"), page => Draw(page, state, canvas.Now));

    private static void Draw(Page page, BenchState state, DateTimeOffset now)
    {
        var (width, height) = (page.Width, page.Height);
        var run = state.Run.File.Run;
        page.Add(" " + Title(run, width - 1), Tone.Strong);
        Advice(page, state);
        Middle(page, state, EntryRow(height) - 2 - page.Lines.Count);
        page.FillTo(EntryRow(height) - 2);
        var error = state.Error is null ? [] : Paragraph.Of(state.Error, width - 4).Take(2).ToList();
        page.Add(error.Count > 0 ? new Piece(" ! " + error[0], Tone.Bad) : new Piece(" " + Said(page, state), Tone.Dim));
        if (error.Count > 1)
        {
            page.Add("   " + error[1], Tone.Bad);
        }
        else
        {
            page.Add(
                new Piece(" " + Strip(page, state, now) + state.Clock.Words(now), state.Clock.HasRung ? Tone.Caution : Tone.Plain),
                new Piece(state.Beside.IsEmpty ? "" : Say($" · with {state.Beside.Words}")));
        }

        page.Add(Entry(state, now));
        page.Add(BenchScreen.Keys.Footer(width, page.IsAscii), Tone.Dim);
    }

    /// <summary>What just happened, and how the instruments stand; those give way last.</summary>
    private static string Said(Page page, BenchState state)
    {
        var feeds = BenchFeeds.Words(state, page.IsAscii);
        var room = page.Width - 2 - PlainText.Columns(feeds) - 3;
        return feeds.Length == 0
            ? state.Said
            : state.Said.Length == 0 || room < 12
            ? feeds
            : $"{feeds} · {PlainText.Shorten(state.Said, room)}";
    }

    /// <summary>Which pot this is and what is wanted of it; a long name gives way, the target never does.</summary>
    private static string Title(Core.Pots.Run run, int columns)
    {
        var wanted = " · " + Wanted(run, columns + 1);
        return RunTitle.Of(run, columns - PlainText.Columns(wanted)) + wanted;
    }

    private static string Wanted(Core.Pots.Run run, int width)
    {
        var strings = Strings(run, width);
        return run.Target is not { } target ? Say("no target (F8 sets one)")
            : strings.Length > 0 && width < WideTitle ? Say($"aim {AdviceWords.Band(target.Band)}{strings}")
            : Say($"target {AdviceWords.Band(target.Band)}{strings}");
    }

    private static string Strings(Core.Pots.Run run, int width)
        => run.TargetString is not { } wanted || !PairRoles.Apply(run) ? ""
            : width < WideTitle ? string.Create(Numbers, $", {wanted.Low.Millimeters:0.##}-{wanted.High.Millimeters:0.##} mm")
            : Say($", string {wanted.Low.Millimeters:0.##} to {wanted.High.Millimeters:0.##} mm");

    private static string Strip(Page page, BenchState state, DateTimeOffset now)
        => state.Clock is { Due: { } due } clock && clock.Standing(now) is { } standing
            && BuildUpStrip.Of(state.Feeds.Trace, state.Advice?.Picture, due, standing, 16, page.IsAscii) is { Length: > 0 } strip
            ? strip + " "
            : "";

    private static string Entry(BenchState state, DateTimeOffset now)
    {
        var (reading, wait, note) = Labels(state);
        var clock = state.Clock.Standing(now) is { } standing ? FormattableString.Invariant($"{standing.TotalSeconds:0}") : "";
        return reading + new string(' ', ReadingWidth) + wait + clock.PadRight(WaitWidth)[..WaitWidth] + note;
    }

    /// <summary>What stands before the fields.</summary>
    private static (string Reading, string Wait, string Note) Labels(BenchState state)
        => (Say(" reading "), $" {BenchValue.Unit(state.Run.File.Run)}{Say("  wait ")}", Say(" s note "));

    private static void Advice(Page page, BenchState state)
    {
        var inside = page.Width - 4;
        var rows = page.Height >= 30 ? 6 : 4;
        var lines = AdviceLines(state, inside, rows).ToList();
        var mark = state.IsWorking ? Say(" working it out ") : "";
        page.Add(Top(page, mark));
        for (var i = 0; i < rows; i++)
        {
            var line = i < lines.Count ? lines[i] : new Piece("");
            var tone = state.IsWorking ? Tone.Dim : line.Tone;
            page.Add(
                new Piece(page.IsAscii ? " |" : " │"),
                new Piece(" " + page.Fit(line.Text, inside - 1), tone),
                new Piece(page.IsAscii ? "|" : "│"));
        }

        page.Add(page.IsAscii ? " +" + new string('-', inside) + "+" : " └" + new string('─', inside) + "┘");
    }

    private static string Top(Page page, string mark)
    {
        var inside = page.Width - 4;
        var (line, left, right) = page.IsAscii ? ('-', "+", "+") : ('─', "┌", "┐");
        return $" {left}{new string(line, inside - mark.Length - 1)}{mark}{line}{right}";
    }

    private static IEnumerable<Piece> AdviceLines(BenchState state, int width, int rows)
    {
        if (state.Advice?.Advice is not { } advice)
        {
            return Paragraph.Of(state.Advice?.Refused ?? Say("working out what to do"), width - 2).Take(rows)
                .Select(l => new Piece(l, state.Advice is null ? Tone.Dim : Tone.Caution));
        }

        var tone = advice.Action switch
        {
            BenchAction.Stop => Tone.Good,
            BenchAction.LetDown or BenchAction.GiveUp => Tone.Bad,
            BenchAction.Wait or BenchAction.Measure => Tone.Caution,
            _ => Tone.Strong,
        };
        var limit = advice.Thickener.Limit;
        var (action, chances) = (AdviceWords.Headline(advice).First(), Both(advice));
        var isTogether = PlainText.Columns(action + chances) <= width - 2;
        Piece[] lines =
        [
            new(isTogether ? action + chances : action, tone),
            .. isTogether ? Array.Empty<Piece>() : [new(chances.Trim())],
            new(string.Join("  ", AdviceWords.Headline(advice).Skip(1).DefaultIfEmpty(
                Say($"limit {Shown.Dose(limit.Dose)}: {LimitWords.Of(limit)}")))),
            new(Values(advice, width - 2)),
        ];
        return [.. lines, .. Beginning(AdvicePage.Why(advice), width - 2, rows - lines.Length).Select(l => new Piece(l, Tone.Dim))];
    }

    /// <summary>The first lines of a text; where there are more, the last one says how to see them.</summary>
    private static List<string> Beginning(string text, int width, int rows)
    {
        var more = " … " + Say("(? shows all)");
        var lines = Paragraph.Of(text, width).ToList();
        if (lines.Count <= rows || rows <= 0)
        {
            return lines[..Math.Min(lines.Count, Math.Max(0, rows))];
        }

        var last = Paragraph.Of(string.Join(' ', lines.Skip(rows - 1)), width - PlainText.Columns(more)).First();
        return [.. lines.Take(rows - 1), last + more];
    }

    /// <summary>What is expected, or known, of each quantity; the chances too where there is but one. The risk is never cut.</summary>
    private static string Values(Advice advice, int width)
    {
        var isOfSeveral = advice.Quantities.Length > 1;
        var lead = advice.Body.Expected is not null ? Say("expect ") : advice.Body.IsRead ? Say("now ") : "";
        var values = lead + string.Join(
            " · ", advice.Quantities.Select(q => AdviceWords.Expected(q, isOfSeveral) ?? AdviceWords.Now(q, isOfSeveral)).OfType<string>());
        if (isOfSeveral || !advice.IsAllRead)
        {
            return values;
        }

        var (inBand, over) = (Say($" · in band {AdviceWords.InBand(advice)}"), Say($" · over {Shown.Chance(advice.ChanceAnyOver)}"));
        string[] ways = [values + inBand + Say($" · over {AdviceWords.Over(advice)}"), values + inBand + over, values + over];
        return ways.FirstOrDefault(w => PlainText.Columns(w) <= width, ways[^1]);
    }

    /// <summary>The chances of several quantities, which stand beside what to do.</summary>
    private static string Both(Advice advice) => advice.Quantities.Length > 1 && advice.IsAllRead
        ? Say($"   both in band {Shown.Chance(advice.ChanceAllInBand)}, over {Shown.Chance(advice.ChanceAnyOver)}")
        : "";

    private static void Middle(Page page, BenchState state, int rows)
    {
        var chart = page.Width >= 80 && state.Advice?.Picture is not null
            && rows >= TerminalChart.LeastHeight;
        var right = chart ? Math.Max(TerminalChart.LeastWidth + 1, page.Width - 62) : 0;
        var table = BenchTable.Lines(state, page, page.Width - right - 1, rows);
        var picture = !chart ? null : RunPlots.Usual(state.Advice!.Picture!);
        var drawn = picture is null ? [] : TerminalChart.Draw(picture, right - 1, rows, page.IsAscii);
        for (var i = 0; i < rows; i++)
        {
            var line = i < table.Count ? table[i] : new Piece("");
            page.Add(
                new Piece(" " + page.Fit(line.Text, page.Width - right - 1), line.Tone),
                new Piece(i < drawn.Count ? drawn[i] : "", state.IsWorking ? Tone.Dim : Tone.Plain));
        }
    }
}
