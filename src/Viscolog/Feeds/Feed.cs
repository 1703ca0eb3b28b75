using System.Globalization;
using System.Net.Sockets;
using System.Text;
using Viscolog.Text;

namespace Viscolog.Feeds;

/// <summary>
/// Listens to an instrument on a thread of its own and tells what it says. It never throws at anybody: what is lost is tried again until it
/// is disposed of, and what was not understood is told, not used.
/// </summary>
/// <param name="name">The instrument's name.</param>
/// <param name="source">Where its lines come from.</param>
/// <param name="pattern">How they are read; null to have them told as they come.</param>
/// <param name="clock">The time.</param>
/// <param name="tell">Takes what happened, on the feed's own thread.</param>
internal sealed class Feed(string name, LineSource source, LinePattern? pattern, TimeProvider clock, Action<FeedEvent> tell) : IDisposable
{
    /// <summary>After so long without a line it is told that there is none.</summary>
    public static readonly TimeSpan SilentAfter = TimeSpan.FromSeconds(30);

    private static readonly TimeSpan FirstRetry = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan LongestRetry = TimeSpan.FromSeconds(5);

    private readonly CancellationTokenSource _stop = new();
    private readonly LineCutter _cutter = new();
    private Thread? _thread;
    private long _misread;
    private bool _isToldOfNoise;

    public void Start()
    {
        _thread = new Thread(Run) { IsBackground = true, Name = "feed " + name };
        _thread.Start();
    }

    /// <summary>Stops listening. A source that is just waited for is left to end by itself.</summary>
    public void Dispose()
    {
        _stop.Cancel();
        _thread?.Join(TimeSpan.FromSeconds(1));
    }

    private void Run()
    {
        var (retry, isLost) = (FirstRetry, false);
        while (!_stop.IsCancellationRequested)
        {
            try
            {
                using var stream = source.Open();
                tell(new FeedEvent.Told(name, isLost ? FeedState.Back : FeedState.Open, source.Name));
                (retry, isLost) = (FirstRetry, true);
                Listen(stream);
                tell(new FeedEvent.Told(name, source.ComesBack ? FeedState.Lost : FeedState.Ended, source.Name));
            }
            catch (Exception e) when (e is IOException or ObjectDisposedException or InvalidOperationException or SocketException)
            {
                if (!isLost || retry == FirstRetry)
                {
                    tell(new FeedEvent.Told(name, FeedState.Lost, TerminalText.Of(OneLine.Of(e.Message))));
                }

                isLost = true;
            }

            _cutter.Drop();
            if (!source.ComesBack)
            {
                return;
            }

            _stop.Token.WaitHandle.WaitOne(retry);
            retry = retry * 2 < LongestRetry ? retry * 2 : LongestRetry;
        }
    }

    /// <summary>Reads until the end, or until it is to stop.</summary>
    private void Listen(Stream stream)
    {
        var buffer = new byte[4096];
        var (heard, asked, isSilent) = (clock.GetTimestamp(), (long?)null, false);
        if (source.OpensInside || stream is SourceStream { OpensInside: true })
        {
            _cutter.BeginInside();
        }

        while (!_stop.IsCancellationRequested)
        {
            if (stream.CanWrite && pattern?.Ask is { } ask && (asked is not { } last || clock.GetElapsedTime(last) >= pattern.Every))
            {
                asked = clock.GetTimestamp();
                stream.Write(Encoding.ASCII.GetBytes(ask + "\r\n"));
                stream.Flush();
            }

            int length;
            try
            {
                length = stream.Read(buffer, 0, buffer.Length);
            }
            catch (Exception e) when (LineSource.IsPatience(e))
            {
                _cutter.BeginLine();
                if (!isSilent && clock.GetElapsedTime(heard) >= SilentAfter)
                {
                    isSilent = true;
                    tell(
                        new FeedEvent.Told(
                            name,
                            FeedState.Silent,
                            string.Create(CultureInfo.InvariantCulture, $"no line for {SilentAfter.TotalSeconds:0} s")));
                }

                continue;
            }

            if (length == 0)
            {
                Last();
                return;
            }

            (heard, isSilent) = (clock.GetTimestamp(), false);
            foreach (var line in _cutter.Cut(buffer.AsMemory(0, length)))
            {
                Take(line);
                if (_stop.IsCancellationRequested)
                {
                    return;
                }
            }

            TellOfNoise();
        }
    }

    /// <summary>
    /// What stands after the last line break when a source ends is a line of a file; of a wire that was cut it is half a line.
    /// </summary>
    private void Last()
    {
        if (!source.ComesBack && _cutter.Drop() is { Length: > 0 } rest)
        {
            Take(rest);
        }
    }

    private void Take(string line)
    {
        switch (pattern?.Read(line))
        {
            case null:
                tell(new FeedEvent.Raw(name, line));
                break;
            case LineOutcome.Understood understood:
                tell(new FeedEvent.Understood(name, understood, clock.GetLocalNow()));
                break;
            case LineOutcome.Misread misread:
                _misread++;
                tell(new FeedEvent.Misread(name, PlainText.Shorten(TerminalText.Of(OneLine.Of(line)), 80), misread.Reason, _misread));
                break;
            case LineOutcome.Skipped:
                break;
        }
    }

    private void TellOfNoise()
    {
        if (_cutter.IsNoise == _isToldOfNoise)
        {
            return;
        }

        _isToldOfNoise = _cutter.IsNoise;
        if (_isToldOfNoise)
        {
            var speed = source is LineSource.Serial serial
                ? string.Create(CultureInfo.InvariantCulture, $"; the port listens at {serial.Baud} baud: is that the instrument's?")
                : "";
            tell(new FeedEvent.Told(name, FeedState.Noise, "most of what comes is no text" + speed));
        }
    }
}

/// <summary>Something that happened to a feed. The set of cases is closed.</summary>
/// <param name="From">The instrument.</param>
internal abstract record FeedEvent(string From)
{
    /// <summary>A line was understood.</summary>
    internal sealed record Understood(string From, LineOutcome.Understood Line, DateTimeOffset At) : FeedEvent(From);

    /// <summary>A line was not.</summary>
    /// <param name="From">The instrument.</param>
    /// <param name="Line">Its beginning, harmless to show.</param>
    /// <param name="Reason">Why not.</param>
    /// <param name="Count">How many so far.</param>
    internal sealed record Misread(string From, string Line, string Reason, long Count) : FeedEvent(From);

    /// <summary>A line as it came, where nobody has said how lines are read.</summary>
    internal sealed record Raw(string From, string Line) : FeedEvent(From);

    /// <summary>The wire is in another state.</summary>
    internal sealed record Told(string From, FeedState State, string Words) : FeedEvent(From);
}

/// <summary>How a feed stands.</summary>
internal enum FeedState
{
    /// <summary>Opened for the first time.</summary>
    Open,

    /// <summary>Unplugged, closed, or not there yet; it is tried again.</summary>
    Lost,

    /// <summary>Opened again.</summary>
    Back,

    /// <summary>Open, but nothing comes.</summary>
    Silent,

    /// <summary>What comes is no text.</summary>
    Noise,

    /// <summary>It will not come back.</summary>
    Ended,
}
