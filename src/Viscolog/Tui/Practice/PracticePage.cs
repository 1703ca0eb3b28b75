using Viscolog.Core.Practice;
using Viscolog.Text;
using Viscolog.Tui.Pattern;
using Viscolog.Wording;

namespace Viscolog.Tui.Practice;

/// <summary>What the choice of a practice pot shows.</summary>
internal static class PracticePage
{
    public const int LeastHeight = 16;

    public static Page Of(PracticeState state, int width, int height, bool isAscii)
    {
        var page = new Page(width, height, isAscii);
        if (width < Page.LeastWidth || height < LeastHeight)
        {
            page.Add($"practice needs {Page.LeastWidth} x {LeastHeight} characters");
            return page;
        }

        page.Add(new Piece(" Practice", Tone.Strong), new Piece(" · pots with a hidden curve; nothing here touches the log"));
        page.Add("");
        for (var i = 0; i < PracticeDifficulty.All.Length; i++)
        {
            var difficulty = PracticeDifficulty.All[i];
            var lead = i == state.Chosen ? isAscii ? ">" : "▸" : " ";
            page.Add(new Piece($"{lead} {difficulty.Level}  {page.Fit(difficulty.Name, 8)}{difficulty.About}", i == state.Chosen ? Tone.Chosen : Tone.Plain));
        }

        page.Add("");
        page.Add(FormattableString.Invariant($" seed {state.Seed}: the same number gives the same pot, for a whole class (F2)"));
        page.Add(state.Player.Length > 0 ? $" player {state.Player}: scores are kept under this name (F2)" : " no player's name (F2): scores are not kept");
        page.Add("");
        foreach (var line in Paragraph.Of(PracticeWords.Pot(state.Game), width - 2).Take(2))
        {
            page.Add(" " + line, Tone.Dim);
        }

        page.FillTo(height - 2);
        page.Add(" " + state.Said, Tone.Dim);
        page.Add(width >= 80
            ? " Enter play  F2 player, seed  F6 demonstration  F7 scores  F1 help  Esc back  ^Q"
            : " Enter play F2 player, seed F6 demo F7 scores F1 help Esc ^Q", Tone.Dim);
        return page;
    }
}
