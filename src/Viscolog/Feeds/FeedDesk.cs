using System.Collections.Immutable;

namespace Viscolog.Feeds;

/// <summary>
/// Several instruments for a screen: what they tell waits until the screen takes it, of each kind the latest, so that a flood is neither a
/// queue nor a burden.
/// </summary>
internal sealed class FeedDesk : IDisposable
{
    private readonly Lock _lock = new();
    private readonly Dictionary<(string From, Type Kind, bool? IsStable), FeedEvent> _waiting = [];
    private readonly ImmutableArray<Feed> _feeds;
    private Action? _call;
    private bool _isCalled;

    public FeedDesk(IEnumerable<Instrument> instruments, TimeProvider clock)
        => _feeds = [.. instruments.Select(i => new Feed(i.Name, i.Source, i.Pattern, clock, Tell))];

    /// <summary>A desk that has the lines of one source told as they come.</summary>
    public FeedDesk(string name, LineSource source, TimeProvider clock) => _feeds = [new(name, source, null, clock, Tell)];

    public void Start()
    {
        foreach (var feed in _feeds)
        {
            feed.Start();
        }
    }

    /// <summary>Has somebody called, on another thread, when there is something to take; null for nobody.</summary>
    public void Call(Action? call)
    {
        lock (_lock)
        {
            (_call, _isCalled) = (call, false);
        }

        CallOnce();
    }

    /// <summary>What has come since the last time, in the order in which it came last.</summary>
    public ImmutableArray<FeedEvent> Take()
    {
        lock (_lock)
        {
            ImmutableArray<FeedEvent> taken = [.. _waiting.Values];
            _waiting.Clear();
            _isCalled = false;
            return taken;
        }
    }

    public void Dispose()
    {
        Call(null);
        foreach (var feed in _feeds)
        {
            feed.Dispose();
        }
    }

    /// <summary>Takes what a feed tells.</summary>
    internal void Tell(FeedEvent told)
    {
        lock (_lock)
        {
            var key = (told.From, told.GetType(), (told as FeedEvent.Understood)?.Line.IsStable);
            // Removed first, so that it stands behind what came before it.
            _waiting.Remove(key);
            _waiting[key] = told;
        }

        CallOnce();
    }

    private void CallOnce()
    {
        Action? call;
        lock (_lock)
        {
            call = _isCalled || _waiting.Count == 0 ? null : _call;
            _isCalled |= call is not null;
        }

        call?.Invoke();
    }
}
