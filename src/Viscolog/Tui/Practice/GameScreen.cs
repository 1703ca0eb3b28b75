using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;
using Viscolog.Core.Practice;
using Viscolog.PracticeFiles;
using Viscolog.Reports;
using Viscolog.Store;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Practice;

/// <summary>A practice pot being played: draws its state, turns keys into events, and does what the state asks for.</summary>
internal sealed class GameScreen : TuiScreen
{
    private readonly TextField _grams = new() { X = GamePage.FieldColumn, Width = 8, Y = Pos.AnchorEnd(2) };
    private GameState _state;

    public GameScreen(TuiContext context, PracticeGame game, string player)
        : base(context)
    {
        _state = GameSteps.Open(game, player, context.Now);
        _grams.KeyDown += (_, key) => key.Handled = TakeFieldKey(key);
        Add(_grams);
        Initialized += (_, _) => Begin();
    }

    /// <summary>The state as it stands, for tests.</summary>
    internal GameState State => _state;

    protected override Page Draw(int width, int height)
    {
        _grams.Visible = GamePage.HasField(_state, width, height);
        return GamePage.Of(_state, width, height, Context.IsAscii);
    }

    protected override bool TakeKey(Key key)
    {
        if (key == Key.F1)
        {
            RunsOver(new HelpScreen(Context, "Practice", HelpPage.Practice));
        }
        else if (key == Key.F2 && _state.Path is null)
        {
            if (Ask(PracticeForms.LetDown()) is { } letDown)
            {
                Dispatch(letDown);
            }
        }
        else if (key == Key.F3)
        {
            Dispatch(new GameEvent.Stir());
        }
        else if (key == Key.F4)
        {
            Dispatch(new GameEvent.Hurry());
        }
        else if (key == Key.F5 && _state.Path is not null)
        {
            _state = GameSteps.Open(_state.Session.Game, _state.Player, Context.Now);
            _grams.SetFocus();
        }
        else if (key == Key.F6)
        {
            Dispatch(new GameEvent.Turned());
        }
        else if (key == Key.F7 && _state.Path is { } path)
        {
            Export(path);
        }
        else if (key == Key.F8)
        {
            Dispatch(new GameEvent.End());
        }
        else if (key == Key.CursorUp || key == Key.CursorDown)
        {
            Dispatch(new GameEvent.Moved(key == Key.CursorUp ? -1 : 1));
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

    private bool TakeFieldKey(Key key)
    {
        if (key != Key.Enter)
        {
            return (key == Key.CursorUp || key == Key.CursorDown) && TakeKey(key);
        }

        Dispatch(new GameEvent.Typed(_grams.Text));
        return true;
    }

    private void Begin()
    {
        _grams.SetFocus();
        App!.AddTimeout(TimeSpan.FromMilliseconds(200), () =>
        {
            Dispatch(new GameEvent.Ticked());
            return true;
        });
    }

    private void Export(PracticePath path)
    {
        if (Ask(ExportForm.Practice()) is not { } file)
        {
            return;
        }

        NamedPath[] players = _state.Advised is { } advised ? [new(_state.Name, path), new("advised", advised)] : [new(_state.Name, path)];
        Dispatch(new GameEvent.Kept(PracticeForms.Written(PracticeFile.Write(players, file, force: false, DateOnly.FromDateTime(Context.Now.DateTime)))));
    }

    private void Dispatch(GameEvent @event)
    {
        var step = GameSteps.Next(_state, @event, Context.Now);
        if (step.State.Entered != _state.Entered)
        {
            _grams.Text = "";
        }

        _state = step.State;
        foreach (var effect in step.Effects)
        {
            Perform(effect);
        }

        Redraw();
    }

    private void Perform(GameEffect effect)
    {
        switch (effect)
        {
            case GameEffect.Keep keep:
                var fault = new PracticeScores(Context.Log.Place.Folder).Save(PracticeResult.Of(keep.Player, keep.Path, Context.Now));
                Dispatch(new GameEvent.Kept(fault ?? $"score kept under {keep.Player}"));
                break;
            case GameEffect.Compare compare:
                WorkOut("advised way", () => PracticePlayers.Advised(compare.Game), path => Dispatch(new GameEvent.Compared(path)), fault => Dispatch(new GameEvent.Kept(fault)));
                break;
        }
    }
}
