using Terminal.Gui.Input;
using Viscolog.Core.Checking;
using Viscolog.Output;
using Viscolog.Plots.Oxy;
using Viscolog.Store;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Batches;

/// <summary>A product's batches over time.</summary>
internal sealed class TrendScreen : TuiScreen
{
    private TrendState _state;

    /// <summary>Opens it on a product.</summary>
    /// <param name="context">What every screen needs.</param>
    /// <param name="name">The product, or a run of it; null for the first.</param>
    public TrendScreen(TuiContext context, string? name)
        : base(context)
    {
        _state = TrendState.Of(BenchKnowledge.Of(context.Log).Materials, name);
        Initialized += (_, _) => Answer();
    }

    /// <summary>The state as it stands, for tests.</summary>
    internal TrendState State => _state;

    protected override Page Draw(int width, int height) => TrendPage.Of(_state, width, height, Context.IsAscii);

    protected override bool TakeKey(Key key)
    {
        if (key == Key.CursorUp || key == Key.CursorDown)
        {
            Choose(key == Key.CursorUp ? -1 : 1);
        }
        else if (key == Key.PageUp || key == Key.PageDown)
        {
            _state = _state.Scroll(key == Key.PageUp ? -3 : 3);
        }
        else if (key == Key.F1)
        {
            RunsOver(new HelpScreen(Context, "Trend", HelpPage.Trend));
        }
        else if (key == Key.F6)
        {
            _state = _state.Turn();
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

    private void Choose(int by)
    {
        var before = _state.Asked;
        _state = _state.Choose(by);
        if (_state.Asked != before)
        {
            Answer();
        }
    }

    private void Export()
    {
        if (_state.Picture() is not { } picture || Ask(ExportForm.Picture()) is not { } path)
        {
            return;
        }

        _state = _state with
        {
            Said = PictureFile.Write(picture.Picture(), path, force: false) switch
            {
                FileOutcome.Written written => $"written: {written.Path}",
                FileOutcome.Refused refused => refused.Reason,
                _ => "",
            },
        };
    }

    /// <summary>Works the values out beside the screen; the log itself is only read here.</summary>
    private void Answer()
    {
        if (_state.Current is not { } product)
        {
            return;
        }

        var (asked, today) = (_state.Asked, DateOnly.FromDateTime(Context.Now.Date));
        var bench = BenchKnowledge.Of(Context.Log);
        var runs = BenchKnowledge.RunsOf(Context.Log, product);
        WorkOut("trend", () => ProductTrend.Of(product, runs, bench.Oils, today), trend => Show(trend, ""), fault => Show(null, fault));

        void Show(ProductTrend? trend, string said)
        {
            _state = _state.Answered(asked, trend, said);
            Redraw();
        }
    }
}
