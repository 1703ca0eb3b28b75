using Viscolog.PracticeFiles;
using Viscolog.Tui.Pattern;
using Viscolog.Wording;

namespace Viscolog.Tui.Practice;

/// <summary>What the class's score sheet shows.</summary>
internal static class ScoresPage
{
    private const int LeastHeight = 10;

    public static Page Of(ScoresState state, Canvas canvas)
        => Page.Of(canvas, Say("the score sheet"), page => Draw(page, state), Page.LeastWidth, LeastHeight);

    private static void Draw(Page page, ScoresState state)
    {
        page.Add(
            new Piece(" " + Say("Scores"), Tone.Strong),
            new Piece($" · {Count.Of(state.Results.Length, Say("game"), Say("games"))}"));
        page.Add("");
        page.Add(
            Row(
                page,
                Say("player", "scores"),
                " " + Say("pot", "scores"),
                " " + Say("ended", "scores"),
                Say("doses", "scores"),
                Say("waits", "scores"),
                Say("over at", "scores"),
                Say("wasted g", "scores"),
                Say("time", "scores")),
            Tone.Dim);
        if (state.Results.IsEmpty)
        {
            page.Add(" " + Say("no game has been kept yet: give a player's name before you play"));
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
            " " + Verdict(result.Verdict),
            result.Doses.ToString(Numbers),
            result.Waits.ToString(Numbers),
            result.OverAtDose?.ToString(Numbers) ?? "",
            result.WastedG.ToString("0.00", Numbers),
            FormattableString.Invariant($"{(int)time.TotalMinutes}:{time.Seconds:00}"),
        ];
    }

    /// <summary>How a game ended, from the word that was kept.</summary>
    private static string Verdict(string kept) => kept switch
    {
        "in band" => Say("in band", "scores"),
        "over" => Say("over", "scores"),
        "short" => Say("short", "scores"),
        _ => kept,
    };

    private static string Row(Page page, params string[] cells)
    {
        int[] widths = [Math.Max(8, page.Width - 1 - 14 - 9 - 6 - 6 - 8 - 9 - 7 - 1), 14, 9, 6, 6, 8, 9, 7];
        return " " + string.Concat(widths.Zip(cells).Select((c, i) => page.Fit(c.Second, c.First, toRight: i > 2)));
    }
}
