using System.Runtime.InteropServices;

namespace Viscolog.Cli.Calls;

/// <summary>Turns Ctrl+C and a request to end into a token, so that what is under way ends whole.</summary>
internal sealed class StopSignal : IDisposable
{
    private readonly CancellationTokenSource _source = new();
    private readonly List<PosixSignalRegistration> _registrations = [];

    public StopSignal()
    {
        foreach (var signal in (ReadOnlySpan<PosixSignal>)[PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP])
        {
            _registrations.Add(PosixSignalRegistration.Create(signal, Stop));
        }
    }

    public CancellationToken Token => _source.Token;

    public void Dispose()
    {
        _registrations.ForEach(r => r.Dispose());
        _source.Dispose();
    }

    private void Stop(PosixSignalContext context)
    {
        context.Cancel = true;
        _source.Cancel();
    }
}
