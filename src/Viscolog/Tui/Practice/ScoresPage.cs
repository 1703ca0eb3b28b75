using System.Globalization;
using Viscolog.PracticeFiles;
using Viscolog.Tui.Pattern;
using Viscolog.Wording;

namespace Viscolog.Tui.Practice;

/// <summary>What the class's score sheet shows.</summary>
internal static class ScoresPage
{
    private const int LeastHeight = 10;

    public static Page Of(ScoresState state, Canvas canvas)
        => Page.Of(canvas, "the score sheet", page => Draw(page, state), Page.LeastWidth, LeastHeight);

    private static void Draw(Page page, ScoresState state)
    {
        page.Add(new Piece(" Scores", Tone.Strong), new Piece($" · {Count.Of(state.Results.Length, "game", "games")}"));
        page.Add("");
        page.Add(Row(page, "player", " pot", " ended", "doses", "waits", "over at", "wasted g", "time"), Tone.Dim);
        if (state.Results.IsEmpty)
        {
            page.Add(" no game has been kept yet: give a player's name before you play");
        }

        foreach (var result in state.Results.Skip(state.Above).Take(page.Height - 2 - page.Lines.Count))
        {
            page.Add(Row(page, Cells(result)));
        }

        page.Foot(state.Said, ScoresScreen.Keys);
    }

    private static string[] Cells(PracticeResult result)
    {
        var time = TimeSpan.FromSeconds(Math.Clamp(result.TimeS, 0, 360_000));
        return
        [
            result.Player,
            FormattableString.Invariant($" {result.Pot} {result.Seed}"),
            " " + result.Verdict,
            result.Doses.ToString(CultureInfo.InvariantCulture),
            result.Waits.ToString(CultureInfo.InvariantCulture),
            result.OverAtDose?.ToString(CultureInfo.InvariantCulture) ?? "",
            result.WastedG.ToString("0.00", CultureInfo.InvariantCulture),
            FormattableString.Invariant($"{(int)time.TotalMinutes}:{time.Seconds:00}"),
        ];
    }

    private static string Row(Page page, params string[] cells)
    {
        int[] widths = [Math.Max(8, page.Width - 1 - 14 - 9 - 6 - 6 - 8 - 9 - 7 - 1), 14, 9, 6, 6, 8, 9, 7];
        return " " + string.Concat(widths.Zip(cells).Select((c, i) => page.Fit(c.Second, c.First, toRight: i > 2)));
    }
}
