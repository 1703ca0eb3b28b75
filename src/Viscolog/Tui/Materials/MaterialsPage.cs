using Viscolog.Core.Checking;
using Viscolog.MaterialFiles;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Materials;

/// <summary>What the list of materials shows.</summary>
internal static class MaterialsPage
{
    public static Page Of(MaterialsState state, int width, int height, bool isAscii)
    {
        var page = new Page(width, height, isAscii);
        if (width < Page.LeastWidth || height < 10)
        {
            page.Add($"the list needs {Page.LeastWidth} x 10 characters");
            return page;
        }

        page.Add(" Materials", Tone.Strong);
        page.Add("");
        page.Add(new Piece("   " + page.Fit("kind", 14) + page.Fit("name", 20) + "what is kept of it", Tone.Dim));
        var rows = height - 3 - page.Lines.Count;
        var chosen = Math.Clamp(state.Chosen, 0, Math.Max(0, state.All.Length - 1));
        var first = Math.Clamp(chosen - (rows / 2), 0, Math.Max(0, state.All.Length - rows));
        if (state.All.IsEmpty)
        {
            page.Add("   none yet: F2 adds one, 'viscolog import' brings a file of them in");
        }

        for (var i = first; i < Math.Min(state.All.Length, first + rows); i++)
        {
            var row = state.All[i];
            var drift = row.Material is Material.OfMethod method && state.Drifts.GetValueOrDefault(method.Method.Method.Id) is { } words ? $"{words}  " : "";
            var cells = drift + string.Join("  ", MaterialCells.Of(row).Where(c => c.Key != "retired").Select(c => $"{c.Key} {c.Value}"));
            var lead = i == chosen ? isAscii ? " > " : " ▸ " : "   ";
            page.Add(new Piece(lead + page.Fit(MaterialCells.KindOf(row.Material), 14) + page.Fit(row.Material.Name, 20) + (row.Material.IsRetired ? "retired  " : "") + cells, i == chosen ? Tone.Chosen : row.Material.IsRetired ? Tone.Dim : Tone.Plain));
        }

        page.FillTo(height - 2);
        page.Add(" " + state.Said, Tone.Dim);
        page.Add(" Enter change  F2 add  F5 retire or offer  F6 certified oil  F1 help  Esc  ^Q", Tone.Dim);
        return page;
    }
}
