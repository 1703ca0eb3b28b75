using System.Collections.Immutable;
using Terminal.Gui.Input;
using Viscolog.Core.Checking;
using Viscolog.Core.Measuring;
using Viscolog.MaterialFiles;
using Viscolog.Store;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Materials;

/// <summary>Materials: add, change, retire.</summary>
internal sealed class MaterialsScreen : TuiScreen
{
    private MaterialsState _state;

    public MaterialsScreen(TuiContext context)
        : base(context)
        => _state = new(All()) { Drifts = Drifts() };

    protected override Page Draw(int width, int height) => MaterialsPage.Of(_state, width, height, Context.IsAscii);

    protected override bool TakeKey(Key key)
    {
        if (key == Key.CursorUp || key == Key.CursorDown)
        {
            _state = _state.Move(key == Key.CursorUp ? -1 : 1);
        }
        else if (key == Key.F1)
        {
            RunsOver(new HelpScreen(Context, "Materials", HelpPage.Materials));
        }
        else if (key == Key.F2)
        {
            if (Ask(MaterialForm.Kind()) is { } kind)
            {
                Keep(Ask(MaterialForm.Of(kind, null)));
            }
        }
        else if (key == Key.Enter && _state.Current is { } chosen)
        {
            Keep(Ask(MaterialForm.Of(MaterialCells.KindOf(chosen.Material), chosen)));
        }
        else if (key == Key.F5 && _state.Current is { } current)
        {
            Keep(current with { Material = current.Material with { IsRetired = !current.Material.IsRetired } });
        }
        else if (key == Key.F6 && _state.Current?.Material is Material.OfMethod method)
        {
            ReadOil(method.Method.Method);
        }
        else if (key == Key.Esc)
        {
            GoBack();
        }
        else
        {
            return false;
        }

        Redraw();
        return true;
    }

    private ImmutableArray<MaterialRow> All()
        => [.. Context.Log.Materials().OrderBy(m => MaterialKind.All.ToList().IndexOf(MaterialCells.KindOf(m.Material))).ThenBy(m => m.Material.Name, StringComparer.Ordinal)];

    private void Keep(MaterialRow? row)
    {
        if (row is null)
        {
            return;
        }

        _state = _state with { All = All(), Said = Said(Context.Log.State([row]).Outcome, row.Material.Name) };
    }

    private void ReadOil(Method method)
    {
        var today = DateOnly.FromDateTime(Context.Now.Date);
        if (Ask(OilForm.Of(method, Context.Log.Oils() is [.., var last] ? last.Row : null, today)) is { } row)
        {
            var said = Said(Context.Log.AddOil(row), row.Reading.Oil.Name);
            _state = _state with { Drifts = Drifts(), Said = said };
        }
    }

    private ImmutableDictionary<string, string> Drifts()
    {
        var today = DateOnly.FromDateTime(Context.Now.Date);
        return BenchKnowledge.Of(Context.Log).Drifts().GroupBy(d => d.Condition.Method.Id, StringComparer.Ordinal)
            .ToImmutableDictionary(g => g.Key, g => string.Join("; ", g.Select(d => d.Brief(today))), StringComparer.Ordinal);
    }

    private static string Said(WriteOutcome outcome, string name) => outcome switch
    {
        WriteOutcome.Saved => $"saved: {name}",
        WriteOutcome.SavedOnly saved => saved.Reason,
        WriteOutcome.NotSaved not => $"not saved: {not.Reason}",
        _ => "",
    };
}
