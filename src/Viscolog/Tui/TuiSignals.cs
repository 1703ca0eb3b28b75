using System.Runtime.InteropServices;
using Terminal.Gui.App;

namespace Viscolog.Tui;

/// <summary>Ends the screens on a signal so that the terminal is as it was before.</summary>
internal sealed class TuiSignals : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    private readonly List<PosixSignalRegistration> _registrations = [];
    private readonly IApplication _app;
    private readonly Action<int> _ended;

    public TuiSignals(IApplication app, Action<int> ended)
    {
        (_app, _ended) = (app, ended);
        foreach (var signal in (ReadOnlySpan<PosixSignal>)
        [
            PosixSignal.SIGINT,
            PosixSignal.SIGTERM,
            PosixSignal.SIGQUIT,
            PosixSignal.SIGHUP,
        ])
        {
            _registrations.Add(PosixSignalRegistration.Create(signal, End));
        }
    }

    public void Dispose() => _registrations.ForEach(r => r.Dispose());

    private void End(PosixSignalContext context)
    {
        context.Cancel = true;
        var code = context.Signal switch { PosixSignal.SIGINT => 130, PosixSignal.SIGQUIT => 131, PosixSignal.SIGHUP => 129, _ => 143 };
        _ended(code);
        TuiRescue.StopAll(_app);
        new Thread(() =>
        {
            Thread.Sleep(Patience);
            Environment.Exit(code);
        })
        { IsBackground = true }.Start();
    }
}
