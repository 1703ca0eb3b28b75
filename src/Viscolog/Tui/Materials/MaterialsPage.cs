using Viscolog.Core.Checking;
using Viscolog.MaterialFiles;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Materials;

/// <summary>What the list of materials shows.</summary>
internal static class MaterialsPage
{
    private const int LeastHeight = 10;

    public static Page Of(MaterialsState state, Canvas canvas)
        => Page.Of(canvas, Say("the list"), page => Draw(page, state), Page.LeastWidth, LeastHeight);

    private static void Draw(Page page, MaterialsState state)
    {
        page.Add(" " + Say("Materials"), Tone.Strong);
        page.Add("");
        page.Add(new Piece("   " + page.Fit(Say("kind"), 14) + page.Fit(Say("name"), 20) + Say("details"), Tone.Dim));
        var rows = page.Height - 3 - page.Lines.Count;
        var chosen = Math.Clamp(state.Chosen, 0, Math.Max(0, state.All.Length - 1));
        var first = Page.First(chosen, state.All.Length, rows);
        if (state.All.IsEmpty)
        {
            page.Add("   " + Say("none yet: F2 adds one, 'viscolog import' reads a file of them"));
        }

        for (var i = first; i < Math.Min(state.All.Length, first + rows); i++)
        {
            var row = state.All[i];
            var drift = row.Material is Material.OfMethod method && state.Drifts.GetValueOrDefault(method.Method.Method.Id) is { } words
                ? $"{words}  "
                : "";
            var cells = drift + string.Join("  ", MaterialCells.Of(row).Where(c => c.Key != "retired").Select(c => $"{c.Key} {c.Value}"));
            var lead = i == chosen ? $" {page.ChosenMark} " : "   ";
            page.Add(new Piece(
                lead + page.Fit(KindWords.Of(MaterialCells.KindOf(row.Material)), 14) + page.Fit(row.Material.Name, 20)
                    + (row.Material.IsRetired ? Say("retired") + "  " : "") + cells,
                i == chosen ? Tone.Chosen : row.Material.IsRetired ? Tone.Dim : Tone.Plain));
        }

        page.Foot(state.Said, MaterialsScreen.Keys);
    }
}
