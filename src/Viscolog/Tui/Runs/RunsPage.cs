using System.Collections.Immutable;
using System.Globalization;
using Viscolog.Store.Copy;
using Viscolog.Tui.Pattern;
using Viscolog.Wording;

namespace Viscolog.Tui.Runs;

/// <summary>What the list of runs shows, but for the field of the filter.</summary>
internal static class RunsPage
{
    private const int LeastHeight = 10;

    public static ImmutableArray<(int X, int Width)> Fields(RunsState state, int width, int height)
        => width < Page.LeastWidth || height < LeastHeight ? [] : [(8, 30)];

    public static Page Of(RunsState state, Canvas canvas)
        => Page.Of(canvas, "the list", page => Draw(page, state), Page.LeastWidth, LeastHeight);

    private static void Draw(Page page, RunsState state)
    {
        var shown = state.Shown;
        page.Add(
            new Piece(state.IsPractice ? " Runs of the practice log (invented)" : " Runs", Tone.Strong),
            new Piece($" · {Count.Of(shown.Length, "run", "runs")}"),
            new Piece(shown.Length < state.All.Length ? $" of {state.All.Length}" : ""),
            new Piece(state.Marked.Count > 0 ? $" · {state.Marked.Count} marked" : ""));
        page.Add("");
        page.Add("  " + Row(page, "run", "name", "base", "thickener", "entries", "last"), Tone.Dim);
        var rows = page.Height - 3 - page.Lines.Count;
        var chosen = Math.Clamp(state.Chosen, 0, Math.Max(0, shown.Length - 1));
        var first = Page.First(chosen, shown.Length, rows);
        if (shown.Length == 0)
        {
            page.Add(state.All.Length > 0 ? "   no run is like that" : "   no runs yet: F2 begins one");
            page.Add(state.All.Length > 0 ? "" : "   F3 opens a practice log with invented runs, kept apart from this one");
        }

        for (var i = first; i < Math.Min(shown.Length, first + rows); i++)
        {
            var run = shown[i];
            var lead = (i == chosen ? page.ChosenMark : " ") + (state.Marked.Contains(run.Number) ? "*" : " ");
            page.Add(new Piece(lead + Row(page, Cells(run)), i == chosen ? Tone.Chosen : Tone.Plain));
        }

        page.FillTo(page.Height - 3);
        page.Add(new Piece(" " + state.Said, Tone.Dim));
        page.Add(" search ");
        page.Add(RunsScreen.Keys(state).Footer(page.Width), Tone.Dim);
    }

    private static string[] Cells(RunSummary run) =>
    [
        run.Number.ToString(CultureInfo.InvariantCulture),
        run.Header.Name ?? "",
        run.Header.Base.Name ?? "",
        string.Join(", ", run.Thickeners),
        run.Entries.ToString(CultureInfo.InvariantCulture),
        run.Last.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture),
    ];

    private static string Row(Page page, params string[] cells)
    {
        int[] widths = [6, Math.Max(10, page.Width - 2 - 6 - 2 - 2 - 10 - 2 - 9 - 2 - 7 - 2 - 16 - 1), 10, 9, 7, 16];
        return string.Join("  ", widths.Zip(cells).Select((c, i) => page.Fit(c.Second, c.First, toRight: i is 0 or 4)));
    }
}
