using System.Collections.Immutable;
using Terminal.Gui.Input;
using Viscolog.Core.Advising;
using Viscolog.Output;
using Viscolog.Plots;
using Viscolog.Plots.Oxy;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Charts;

/// <summary>The chart alone, of one run or several.</summary>
internal sealed class ChartScreen(TuiContext context, ImmutableArray<RunPicture> pictures) : TuiScreen(context)
{
    private ChartState _state = new(pictures);

    protected override Page Draw(int width, int height) => ChartPage.Of(_state, width, height, Context.IsAscii);

    protected override bool TakeKey(Key key)
    {
        if (key == Key.F6)
        {
            _state = _state.Next() with { Said = "" };
        }
        else if (key == Key.F7 && Ask(ExportForm.Picture()) is { } path)
        {
            _state = _state with
            {
                Said = PictureFile.Write(RunPlots.Of(_state.Pictures, _state.Kind), path, force: false) switch
                {
                    FileOutcome.Written written => $"written: {written.Path}",
                    FileOutcome.Refused refused => refused.Reason,
                    _ => "",
                },
            };
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
}
