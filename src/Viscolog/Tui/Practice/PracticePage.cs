using Viscolog.Core.Practice;
using Viscolog.Text;
using Viscolog.Tui.Pattern;
using Viscolog.Wording;

namespace Viscolog.Tui.Practice;

/// <summary>What the choice of a practice pot shows.</summary>
internal static class PracticePage
{
    public static Page Of(PracticeState state, Canvas canvas) => Page.Of(canvas, Say("practice"), page => Draw(page, state));

    private static void Draw(Page page, PracticeState state)
    {
        page.Add(
            new Piece(" " + Say("Practice"), Tone.Strong),
            new Piece(" · " + Say("pots with a hidden curve; nothing here touches the log")));
        page.Add("");
        for (var i = 0; i < PracticeDifficulty.All.Length; i++)
        {
            var difficulty = PracticeDifficulty.All[i];
            var lead = i == state.Chosen ? page.ChosenMark : " ";
            page.Add(new Piece(
                $"{lead} {difficulty.Level}  {page.Fit(difficulty.Name, 8)}{PracticeWords.About(difficulty)}",
                i == state.Chosen ? Tone.Chosen : Tone.Plain));
        }

        page.Add("");
        page.Add(" " + Say($"seed {state.Seed}: the same number gives the same pot, for a whole class (F2)"));
        page.Add(" " + (state.Player.Length > 0
            ? Say($"player {state.Player}: scores are kept under this name (F2)")
            : Say("no player's name (F2): scores are not kept")));
        page.Add("");
        foreach (var line in Paragraph.Of(PracticeWords.Pot(state.Game), page.Width - 2).Take(2))
        {
            page.Add(" " + line, Tone.Dim);
        }

        page.Foot("", PracticeScreen.Keys);
    }
}
