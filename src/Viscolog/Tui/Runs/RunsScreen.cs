using System.Collections.Immutable;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;
using Viscolog.Core.Advising;
using Viscolog.Output;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Text;
using Viscolog.Tui.Batches;
using Viscolog.Tui.Bench;
using Viscolog.Tui.Charts;
using Viscolog.Tui.Materials;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.Practice;

namespace Viscolog.Tui.Runs;

/// <summary>The list of runs: open one, begin one, compare, export.</summary>
internal sealed class RunsScreen : TuiScreen
{
    private readonly TextField _filter = new() { X = 8, Width = 30, Y = Pos.AnchorEnd(2) };
    private RunsState _state;

    public RunsScreen(TuiContext context)
        : base(context)
    {
        _state = new(Latest()) { IsPractice = context.IsPractice };
        _filter.KeyDown += (_, key) => key.Handled = key == Key.Enter || key == Key.CursorUp || key == Key.CursorDown ? TakeKey(key) : key.Handled;
        _filter.TextChanged += (_, _) =>
        {
            _state = _state.Search(_filter.Text);
            Redraw();
        };
        Add(_filter);
        Initialized += (_, _) => _filter.SetFocus();
    }

    protected override Page Draw(int width, int height) => RunsPage.Of(_state, width, height, Context.IsAscii);

    /// <summary>Rows that a key moves by; 0 for other keys.</summary>
    private static int Step(Key key)
        => key == Key.CursorUp ? -1 : key == Key.CursorDown ? 1 : key == Key.PageUp ? -10 : key == Key.PageDown ? 10 : 0;

    protected override bool TakeKey(Key key)
    {
        if (Step(key) is var step && step != 0)
        {
            _state = _state.Move(step);
        }
        else if (key == Key.F1)
        {
            RunsOver(new HelpScreen(Context, "Runs", HelpPage.Runs));
        }
        else if (key == Key.Enter && _state.Current is { } chosen)
        {
            Open(chosen.Number);
        }
        else if (key == Key.F2)
        {
            Begin();
        }
        else if (key == Key.F3 && _state.All.IsEmpty && !Context.IsPractice)
        {
            Practise(context => new RunsScreen(context));
        }
        else if (key == Key.Esc && Context.IsPractice)
        {
            GoBack();
        }
        else if (key == Key.F4)
        {
            _state = _state.Mark().Move(1);
        }
        else if (key == Key.F5)
        {
            Compare();
        }
        else if (key == Key.F7)
        {
            Export();
        }
        else if (key == Key.F10)
        {
            Practise(context => new PracticeScreen(context));
        }
        else if (Beside(key) is { } screen)
        {
            RunsOver(screen);
        }
        else
        {
            return false;
        }

        Redraw();
        return true;
    }

    /// <summary>The screen that a key opens beside the list; null where it opens none.</summary>
    private TuiScreen? Beside(Key key)
        => key == Key.F8 ? new MaterialsScreen(Context)
            : key == Key.F9 ? new TrendScreen(Context, _state.Current is { } run ? run.Product ?? run.Name : null)
            : key == Key.F6 && _state.Current is { } chosen ? new CheckScreen(Context, Context.Log.Run(chosen.Number)!)
            : null;

    private ImmutableArray<RunSummary> Latest() => [.. Context.Log.Runs().OrderByDescending(r => r.Number)];

    private void Open(int number)
    {
        if (!RunsOver(new BenchScreen(Context, Context.Log.Run(number)!)))
        {
            _state = _state with { All = Latest(), Said = "" };
            _filter.SetFocus();
        }
    }

    private void Begin()
    {
        var last = _state.All is [var latest, ..] ? Context.Log.Run(latest.Number) : null;
        if (Ask(NewRunForm.Of(Context.Log.Materials(), last)) is not { } file)
        {
            return;
        }

        var (outcome, number) = Context.Log.Begin(file);
        if (outcome is WriteOutcome.Saved)
        {
            Open(number);
            return;
        }

        _state = _state with { Said = outcome switch { WriteOutcome.SavedOnly saved => saved.Reason, WriteOutcome.NotSaved not => $"not saved: {not.Reason}", _ => "" } };
    }

    /// <summary>Shows a screen on the practice log, which is opened for it where it is not open already.</summary>
    private void Practise(Func<TuiContext, TuiScreen> screen)
    {
        if (Context.IsPractice)
        {
            RunsOver(screen(Context));
            return;
        }

        switch (PracticeLog.Open(Context.Log.Place, Context.Clock))
        {
            case LogOutcome.Opened { Log: var log }:
                using (log)
                {
                    RunsOver(screen(Context with { Log = log, IsPractice = true }));
                }

                break;
            case LogOutcome.Absent absent:
                _state = _state with { Said = absent.Reason };
                break;
            case LogOutcome.Busy busy:
                _state = _state with { Said = busy.Reason };
                break;
            case LogOutcome.Refused refused:
                _state = _state with { Said = refused.Reason };
                break;
        }
    }

    private ImmutableSortedSet<int> Meant() => _state.Marked.Count > 0 ? _state.Marked : _state.Current is { } run ? [run.Number] : [];

    private void Compare()
    {
        var pictures = ImmutableArray.CreateBuilder<RunPicture>();
        foreach (var number in Meant())
        {
            var run = Context.Log.Run(number)!.File.Run;
            if (Study.Of(new(run)) is StudyOutcome.Made { Study: { IsRead: true, IsOfTwo: false } study })
            {
                pictures.Add(study.Curve);
            }
        }

        if (pictures.Count == 0)
        {
            _state = _state with { Said = "none of these has a reading that can be drawn" };
            return;
        }

        RunsOver(new ChartScreen(Context, pictures.ToImmutable()));
    }

    private void Export()
    {
        if (Ask(ExportForm.Runs()) is not { } folder)
        {
            return;
        }

        try
        {
            Directory.CreateDirectory(folder);
            var count = 0;
            foreach (var number in Meant())
            {
                var run = Context.Log.Run(number)!;
                using var stream = new MemoryStream();
                RunFileWriter.Write(run.File, stream);
                count += WholeFile.Write(Path.Combine(folder, RunFileName.Of(run.File)), stream.ToArray(), replace: true) ? 1 : 0;
            }

            _state = _state with { Said = $"written: {count} to {folder}" };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            _state = _state with { Said = OneLine.Of($"{folder}: cannot be written: {e.Message}") };
        }
    }
}
