using Terminal.Gui.App;

namespace Viscolog.Tui;

/// <summary>
/// Ends the screens on a fault in the background, where the runtime would end the program with the terminal left as the screens had it.
/// </summary>
internal sealed class TuiRescue : IDisposable
{
    /// <summary>A fault of ours, as the commands' exit codes have it.</summary>
    private const int FaultCode = 70;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);
    private static readonly TimeSpan TimeToTell = TimeSpan.FromSeconds(1);

    private readonly IApplication _app;
    private readonly Action<Exception> _failed;
    private readonly ManualResetEventSlim _restored = new();

    public TuiRescue(IApplication app, Action<Exception> failed)
    {
        (_app, _failed) = (app, failed);
        AppDomain.CurrentDomain.UnhandledException += End;
    }

    /// <summary>Asks every screen to end.</summary>
    public static void StopAll(IApplication app) => app.Invoke(() =>
    {
        foreach (var token in app.SessionStack!.ToArray())
        {
            if (token.Runnable is { } runnable)
            {
                app.RequestStop(runnable);
            }
        }
    });

    /// <summary>The terminal is as it was before.</summary>
    public void Dispose()
    {
        AppDomain.CurrentDomain.UnhandledException -= End;
        _restored.Set();
    }

    // The thread that failed stays here: as soon as it went on, the runtime would abort the program before the log is closed
    // and the fault told.
    private void End(object sender, UnhandledExceptionEventArgs args)
    {
        if (args.ExceptionObject is not Exception fault || _restored.IsSet)
        {
            return;
        }

        _failed(fault);
        StopAll(_app);
        if (_restored.Wait(Patience))
        {
            Thread.Sleep(TimeToTell);
            Environment.Exit(FaultCode);
        }

        // The screens don't answer: leave at least the other page, the mouse and the hidden cursor behind.
        using var output = Console.OpenStandardOutput();
        output.Write("\e[?1003l\e[?1006l\e[?1049l\e[?25h\e[0m"u8);
    }
}
