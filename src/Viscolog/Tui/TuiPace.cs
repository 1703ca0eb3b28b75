using System.IO.Pipes;
using Terminal.Gui.App;

namespace Viscolog.Tui;

/// <summary>
/// Lets the screens rest until a key comes or an answer is there. The toolkit goes round 25 times a second and writes to the terminal each
/// time, whether anything happens or not; resting here takes less of a core and answers a key sooner.
/// </summary>
internal sealed class TuiPace : IDisposable
{
    /// <summary>So often it is asked whether time alone has changed something.</summary>
    private const int Look = 200;

    /// <summary>The toolkit goes round at least so often, to see whether the terminal's size has changed.</summary>
    private const int LongestRest = 1000;

    /// <summary>What has come must first be read by the toolkit's reader, on a thread of its own; until then there is no rest.</summary>
    private const int AwakeAfterKey = 60;

    /// <summary>
    /// After a key or a change rests are short for a while: an Esc may be the beginning of another key, so that the toolkit holds it back
    /// for some turns; and what changes in one turn is drawn in a later one.
    /// </summary>
    private const int ShortRest = 40;

    private const int ShortFor = 300;

    /// <summary>A change is taken up in one turn and drawn in the next.</summary>
    private const int AwakeAfterChange = 10;

    private const ushort Turns = 1000;

    private readonly IApplication _app;
    private readonly ushort _usual = Application.MaximumIterationsPerSecond;
    private readonly AnonymousPipeServerStream _wakened = new(PipeDirection.In);
    private readonly AnonymousPipeClientStream _waker;
    private readonly Lock _lock = new();
    private long _awakeUntil;
    private long _shortUntil;
    private readonly IEnumerable<Func<bool>> _watched;
    private bool _isOver;

    private TuiPace(IApplication app, IEnumerable<Func<bool>> watched)
    {
        (_app, _watched) = (app, watched);
        _waker = new(PipeDirection.Out, _wakened.ClientSafePipeHandle);
        Application.MaximumIterationsPerSecond = Turns;
        _app.Iteration += Rest;
    }

    /// <summary>A pace for screens; null where the system can't wait for keys, and the toolkit's own pace stays.</summary>
    /// <param name="app">Whose turns are made to rest.</param>
    /// <param name="watched">What time alone may change.</param>
    public static TuiPace? Of(IApplication app, IEnumerable<Func<bool>> watched)
        => SystemPoll.CanWaitForKeys ? new(app, watched) : null;

    /// <summary>Ends the rest, from any thread.</summary>
    public void Wake()
    {
        lock (_lock)
        {
            if (!_isOver)
            {
                _waker.WriteByte(0);
            }
        }
    }

    public void Dispose()
    {
        _app.Iteration -= Rest;
        Application.MaximumIterationsPerSecond = _usual;
        lock (_lock)
        {
            _isOver = true;
            _waker.Dispose();
            _wakened.Dispose();
        }
    }

    private void Rest(object? sender, EventArgs e)
    {
        if (Environment.TickCount64 < _awakeUntil)
        {
            return;
        }

        PollEntry[] entries =
        [
            new() { File = SystemPoll.Keys, Events = SystemPoll.Readable },
            new() { File = (int)_wakened.SafePipeHandle.DangerousGetHandle(), Events = SystemPoll.Readable },
        ];
        var (look, longest) = Environment.TickCount64 < _shortUntil ? (ShortRest, ShortRest) : (Look, LongestRest);
        var until = Environment.TickCount64 + longest;
        int came;
        var isDue = false;
        do
        {
            came = SystemPoll.Wait(entries, look);
        }
        while (came == 0 && !(isDue = _watched.Any(changes => changes())) && Environment.TickCount64 < until);
        if (came != 0 || isDue)
        {
            _awakeUntil = Environment.TickCount64 + AwakeAfterChange;
            _shortUntil = Environment.TickCount64 + ShortFor;
        }

        if (came <= 0)
        {
            // Time has changed something, or a signal such as that of another size has come.
            return;
        }

        if ((entries[1].Came & SystemPoll.Readable) != 0)
        {
            _wakened.ReadByte();
        }

        if ((entries[0].Came & SystemPoll.Readable) != 0)
        {
            _awakeUntil = Environment.TickCount64 + AwakeAfterKey;
        }

        if ((entries[0].Came & SystemPoll.Gone) != 0)
        {
            // The terminal is gone: no key will come, and polling would not rest.
            Thread.Sleep(Look);
        }
    }
}
