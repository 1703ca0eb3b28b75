using System.Collections.Immutable;
using Viscolog.Tui.Pattern;
using Viscolog.Wording;

namespace Viscolog.Tui.Runs;

/// <summary>What the list of runs shows, but for the field of the filter.</summary>
internal static class RunsPage
{
    private const int LeastHeight = 10;
    private const int WideFrom = 76;

    /// <summary>Rows above the first run.</summary>
    private const int HeadRows = 3;

    public static ImmutableArray<(int X, int Width)> Fields(RunsState state, int width, int height)
        => width < Page.LeastWidth || height < LeastHeight ? [] : [(8, 30)];

    public static Page Of(RunsState state, Canvas canvas)
        => Page.Of(canvas, Say("the list"), page => Draw(page, state), Page.LeastWidth, LeastHeight);

    /// <summary>A click chooses a run, and opens the one that is chosen already.</summary>
    public static RunsEvent? Clicked(RunsState state, int row, int height)
    {
        var place = Page.First(state.Place, state.Shown.Length, height - 3 - HeadRows) + row - HeadRows;
        return row < HeadRows || row >= height - 3 || place >= state.Shown.Length ? null
            : place == state.Place ? new RunsEvent.Opened()
            : new RunsEvent.Moved(place - state.Place);
    }

    private static void Draw(Page page, RunsState state)
    {
        var shown = state.Shown;
        page.Add(
            new Piece(" " + (state.IsPractice ? Say("Runs of the practice log (invented)") : Say("Runs")), Tone.Strong),
            new Piece($" · {Count.Of(shown.Length, Say("run"), Say("runs"))}"),
            new Piece(shown.Length < state.All.Length ? Say($" of {state.All.Length}") : ""),
            new Piece(shown.Length > 1 ? Say($" · at {state.Place + 1}") : ""),
            new Piece(state.Order switch
            {
                RunOrder.Name => Say(" · by name"),
                RunOrder.Base => Say(" · by base"),
                RunOrder.Last => Say(" · by last change"),
                _ => "",
            }),
            new Piece(state.Marked.Count > 0 ? Say($" · {state.Marked.Count} marked") : ""));
        page.Add(page.Shared.Length > 0 ? " " + page.Shared : "", Tone.Dim);
        string[] heads =
            [Say("run", "column"), Say("name"), Say("base"), Say("thickener"), Say("entries", "column"), Say("last", "column")];
        page.Add("  " + Row(page, heads), Tone.Dim);
        var rows = page.Height - 3 - page.Lines.Count;
        var chosen = state.Place;
        var first = Page.First(chosen, shown.Length, rows);
        if (shown.Length == 0)
        {
            page.Add("   " + (state.All.Length > 0 ? Say("no run matches") : Say("no runs yet: F2 begins one")));
            page.Add(state.All.Length > 0
                ? "" : "   " + Say("F3 opens a practice log with invented runs, kept apart from this one"));
        }

        for (var i = first; i < Math.Min(shown.Length, first + rows); i++)
        {
            var run = shown[i];
            var lead = (i == chosen ? page.ChosenMark : " ") + (state.Marked.Contains(run.Number) ? "*" : run.IsArchived ? "-" : " ");
            page.Add(new Piece(lead + Row(page, RunsState.Cells(run)), i == chosen ? Tone.Chosen : run.IsArchived ? Tone.Dim : Tone.Plain));
        }

        page.FillTo(page.Height - 3);
        page.Add(new Piece(" " + state.Said, Tone.Dim));
        page.Add(page.Fit(Say(" search "), 8));
        page.Add(RunsScreen.Keys(state).Footer(page.Width, page.IsAscii), Tone.Dim);
    }

    private static string Row(Page page, params string[] cells)
    {
        // Where there is little room, names go before the number of entries and the time of day.
        var isWide = page.Width >= WideFrom;
        int[] rest = isWide ? [6, 10, 9, 7, 16] : [5, 9, 9, 0, 10];
        var name = page.Width - 3 - rest.Where(w => w > 0).Sum(w => w + 2);
        int[] widths = [rest[0], name, rest[1], rest[2], rest[3], rest[4]];
        string[] shown = isWide ? cells : [.. cells[..^1], cells[^1].Split(' ')[0]];
        return string.Join(
            "  ", widths.Zip(shown).Select((c, i) => (c.First, Text: page.Fit(c.Second, c.First, toRight: i is 0 or 4)))
                .Where(c => c.First > 0).Select(c => c.Text));
    }
}
