using System.Globalization;
using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Text;

namespace Viscolog.Sharing;

/// <summary>
/// Sends and fetches beside whoever uses the log, on a thread of its own: soon after something was saved, whenever the server says that
/// another bench has added something, and again and again while it can't be reached. It reads the journal and never holds the log up.
/// </summary>
internal sealed class SharePost : IDisposable
{
    private static readonly TimeSpan Slice = TimeSpan.FromMilliseconds(200);
    private static readonly TimeSpan Anyway = TimeSpan.FromSeconds(60);
    private static readonly TimeSpan LongestRetry = TimeSpan.FromMinutes(1);

    private readonly ManualResetEventSlim _stop = new();
    private readonly LogPlace _place;
    private readonly ShareRound _round;
    private readonly string? _password;
    private readonly TimeProvider _clock;
    private readonly long _known;
    private readonly Thread _thread;
    private volatile ShareState _state = new(null, null, "asking the shared database");

    /// <param name="place">The log.</param>
    /// <param name="log">Its identity.</param>
    /// <param name="link">How it is shared.</param>
    /// <param name="password">The password that was typed; null for what the environment says.</param>
    /// <param name="known">Bytes of the journal that are acknowledged.</param>
    /// <param name="clock">The time.</param>
    public SharePost(LogPlace place, Guid log, ShareLink link, string? password, long known, TimeProvider clock)
    {
        (_place, _password, _known, _clock) = (place, password, known, clock);
        _round = new(place, log, clock) { Link = link };
        _thread = new(Run) { IsBackground = true, Name = "sharing" };
        _thread.Start();
    }

    /// <summary>How it stands.</summary>
    public ShareState State => _state;

    /// <summary>Told on the post's thread when that changes.</summary>
    public event EventHandler? Changed;

    /// <summary>The post of a log that is shared; null where it is not.</summary>
    public static SharePost? Of(BenchLog log, TimeProvider clock)
        => ShareLink.Read(log.Place).Link is { } link ? new(log.Place, log.Id, link, null, log.Sound.Length, clock) : null;

    /// <summary>Ends it; what is on its way is sent again next time.</summary>
    public void Dispose()
    {
        _stop.Set();
        if (_thread.Join(TimeSpan.FromSeconds(2)))
        {
            _stop.Dispose();
        }
    }

    private void Run()
    {
        var retry = TimeSpan.FromSeconds(1);
        while (!_stop.IsSet)
        {
            try
            {
                using var server = ShareServer.Connect(_round.Link.Address, _password);
                server.Listen();
                while (!_stop.IsSet)
                {
                    var length = Length();
                    var report = _round.Go(server, _known);
                    retry = TimeSpan.FromSeconds(1);
                    Tell(new(_clock.GetUtcNow(), report, Words(report)));
                    WaitFor(server, length);
                }
            }
            catch (ShareRefused e)
            {
                Tell(_state with { Words = OneLine.Of(e.Message) });
                return;
            }
            catch (Exception e) when (ShareFaults.Is(e) || e is IOException or UnauthorizedAccessException)
            {
                var why = ShareFaults.AsksForPassword(e)
                    ? "the shared database asks for a password"
                    : "the shared database can't be reached";
                Tell(_state with { Words = why + Since() });
                _stop.Wait(retry);
                retry = retry * 2 < LongestRetry ? retry * 2 : LongestRetry;
            }
        }
    }

    private void WaitFor(ShareServer server, long length)
    {
        for (var waited = TimeSpan.Zero; waited < Anyway && !_stop.IsSet && Length() == length; waited += Slice)
        {
            if (server.Wait(Slice))
            {
                return;
            }
        }
    }

    private long Length() => new FileInfo(_place.Journal).Length;

    private string Since() => _state.At is { } at
        ? string.Create(CultureInfo.InvariantCulture, $" since {at.ToLocalTime():HH:mm}; what is logged here is sent later")
        : "; what is logged here is sent later";

    private string Words(ShareReport report) => report.Lost > 0
        ? FormattableString.Invariant($"the shared database has {report.Lost} lines that this log lost: run 'viscolog share'")
        : report.Faults is [var fault, ..] ? fault
        : string.Create(
            CultureInfo.InvariantCulture,
            $"shared, {Wording.Count.Of(report.Benches, "other bench", "other benches")}, asked at {_clock.GetLocalNow():HH:mm:ss}");

    private void Tell(ShareState state)
    {
        _state = state;
        Changed?.Invoke(this, EventArgs.Empty);
    }
}

/// <summary>How sharing stands.</summary>
/// <param name="At">When the last round was done; null before the first.</param>
/// <param name="Report">What it did.</param>
/// <param name="Words">In a few words.</param>
internal sealed record ShareState(DateTimeOffset? At, ShareReport? Report, string Words);
