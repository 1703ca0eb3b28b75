using Terminal.Gui.Input;
using Viscolog.Output;
using Viscolog.PracticeFiles;
using Viscolog.Store;
using Viscolog.Text;
using Viscolog.Tui.Pattern;
using Viscolog.Wording;

namespace Viscolog.Tui.Practice;

/// <summary>The class's score sheet.</summary>
internal sealed class ScoresScreen : TuiScreen
{
    private ScoresState _state;

    public ScoresScreen(TuiContext context)
        : base(context)
    {
        var (results, warnings) = new PracticeScores(context.Log.Place.Folder).All();
        _state = new(results) { Said = warnings.IsEmpty ? "" : $"{Count.Of(warnings.Length, "file", "files")} left out: {warnings[0]}" };
    }

    protected override Page Draw(int width, int height) => ScoresPage.Of(_state, width, height, Context.IsAscii);

    protected override bool TakeKey(Key key)
    {
        if (key == Key.CursorUp || key == Key.CursorDown)
        {
            _state = _state.Move(key == Key.CursorUp ? -1 : 1);
        }
        else if (key == Key.F7)
        {
            Export();
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

    private void Export()
    {
        if (Ask(ExportForm.Scores()) is not { } path)
        {
            return;
        }

        try
        {
            using var stream = new MemoryStream();
            PracticeSheet.Write(_state.Results, stream);
            _state = _state with { Said = WholeFile.Write(path, stream.ToArray(), replace: false) ? $"written: {path}" : $"{path}: exists already; choose another name" };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            _state = _state with { Said = OneLine.Of($"{path}: cannot be written: {e.Message}") };
        }
    }
}
