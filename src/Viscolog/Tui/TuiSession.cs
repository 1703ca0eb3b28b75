using System.Collections.Immutable;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Viscolog.Feeds;
using Viscolog.Sharing;
using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Tui.Bench;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.Practice;
using Viscolog.Tui.Runs;

namespace Viscolog.Tui;

/// <summary>Runs the screens on the terminal: from its first line to the terminal as it was before, whatever ends it.</summary>
internal static class TuiSession
{
    /// <summary>Why there can be no screens here; null where there can.</summary>
    public static string? Obstacle(Func<string, string?> variable)
        => variable("TERM") is null or "" or "dumb" || !Driver.IsAttachedToTerminal(out _, out _)
            ? Say("the bench screen needs a terminal; here use the commands: viscolog advise, import, runs, show (see viscolog --help)")
            : null;

    /// <summary>Runs the screens; says how it ended.</summary>
    /// <param name="log">The open log.</param>
    /// <param name="run">The run to open; null for the list.</param>
    /// <param name="look">What the screens may use.</param>
    public static TuiEnd Run(BenchLog log, LoggedRun? run, TuiLook look)
        => Run(log, look, (app, context, isEnding) => Run(app, context, run, isEnding));

    /// <summary>Runs the practice screens; says how they ended.</summary>
    /// <param name="practice">The open practice log.</param>
    /// <param name="look">What the screens may use.</param>
    public static TuiEnd RunPractice(BenchLog practice, TuiLook look) => Run(practice, look, (app, context, _) =>
    {
        using var screen = PracticeScreen.On(context with { IsPractice = true });
        app.Run(screen);
    });

    private static TuiEnd Run(BenchLog log, TuiLook look, Action<IApplication, TuiContext, Func<bool>> screens)
    {
        var (output, error) = (Console.Out, Console.Error);
        // A stray line would stay in the middle of the screen.
        Console.SetOut(TextWriter.Null);
        Console.SetError(TextWriter.Null);
        Exception? fault = null;
        var signal = 0;
        TuiRescue? rescue = null;
        using var app = Application.Create();
        try
        {
            if (look.IsAscii)
            {
                AsciiGlyphs.Use();
            }

            Action wake = () => { };
            RestingInput.Begin(app, () => wake());
            app.Mouse.IsMouseDisabled = !look.HasMouse;
            app.Driver!.Force16Colors = look.IsSixteenColors || !look.HasColor;
            rescue = new(app, e => fault = e);
            using var signals = new TuiSignals(app, code => signal = code);
            HashSet<Func<bool>> watched = [];
            using var pace = TuiPace.Of(app, watched);
            wake = () => pace?.Wake();
            using var desk = look.Instruments.IsEmpty ? null : new FeedDesk(look.Instruments, TimeProvider.System);
            TuiContext context = new(log, TimeProvider.System, new(look.HasColor, look.Theme), look.IsAscii)
            {
                Wake = () => pace?.Wake(),
                Watched = watched,
                Desk = desk,
                TakesReadings = look.TakesReadings,
                Post = look.Post,
            };
            desk?.Start();
            screens(app, context, () => signal != 0 || fault is not null);
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            fault = e;
        }
        finally
        {
            app.Dispose();
            Console.SetOut(output);
            Console.SetError(error);
            rescue?.Dispose();
        }

        return new(fault, signal);
    }

    /// <summary>Runs the screens on an application that is there already.</summary>
    /// <param name="app">The application.</param>
    /// <param name="context">What every screen needs.</param>
    /// <param name="run">The run to open first; null for the list.</param>
    /// <param name="isEnding">Whether a signal asked to end.</param>
    public static void Run(IApplication app, TuiContext context, LoggedRun? run, Func<bool> isEnding)
    {
        if (run is not null)
        {
            using var bench = BenchScreen.On(context, run);
            app.Run(bench);
            if (bench.Quits || isEnding())
            {
                return;
            }
        }

        using var runs = RunsScreen.On(context);
        app.Run(runs);
    }
}

/// <summary>How the screens ended.</summary>
/// <param name="Fault">A fault of ours; null where there was none.</param>
/// <param name="Signal">The signal that ended them; 0 where none did.</param>
internal sealed record TuiEnd(Exception? Fault, int Signal);

/// <summary>What the screens may use.</summary>
/// <param name="IsAscii">Only printable ASCII.</param>
/// <param name="HasColor">Colours.</param>
/// <param name="IsSixteenColors">No more than sixteen of them.</param>
/// <param name="Theme">The ground that the colours are made for.</param>
/// <param name="HasMouse">Whether the mouse is the screens'.</param>
internal sealed record TuiLook(bool IsAscii, bool HasColor, bool IsSixteenColors, Theme Theme, bool HasMouse)
{
    /// <summary>Instruments to listen to.</summary>
    public ImmutableArray<Instrument> Instruments { get; init; } = [];

    /// <summary>What shares the log with other benches; null where it is not shared.</summary>
    public SharePost? Post { get; init; }

    /// <summary>Whether readings that have come to rest are logged by themselves.</summary>
    public bool TakesReadings { get; init; }

    /// <param name="isAscii">Only printable ASCII.</param>
    /// <param name="hasColor">Colours.</param>
    /// <param name="isSixteenColors">No more than sixteen of them.</param>
    /// <param name="ground">A theme's name; anything else is the terminal's own ground.</param>
    /// <param name="hasMouse">Whether the mouse is the screens'.</param>
    public static TuiLook Of(bool isAscii, bool hasColor, bool isSixteenColors, string? ground, bool hasMouse)
        => new(
            isAscii,
            hasColor,
            isSixteenColors,
            Enum.TryParse<Theme>(ground, ignoreCase: true, out var theme) ? theme : Theme.Terminal,
            hasMouse);
}
