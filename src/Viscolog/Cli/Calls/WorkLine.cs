namespace Viscolog.Cli.Calls;

/// <summary>Shows every second for how long a call has been at work.</summary>
internal sealed class WorkLine : IDisposable
{
    private static readonly TimeSpan Step = TimeSpan.FromSeconds(1);

    private readonly Lock _lock = new();
    private readonly ITimer _timer;
    private bool _hasShown;
    private bool _hasEnded;

    /// <summary>Begins to count.</summary>
    /// <param name="clock">The time.</param>
    /// <param name="show">Shows the seconds.</param>
    public WorkLine(TimeProvider clock, Action<double> show)
    {
        var start = clock.GetTimestamp();
        _timer = clock.CreateTimer(_ => Show(() => show(clock.GetElapsedTime(start).TotalSeconds)), null, Step, Step);
    }

    /// <summary>Shows nothing more; says whether something was shown.</summary>
    public bool End()
    {
        lock (_lock)
        {
            _hasEnded = true;
            Dispose();
            return _hasShown;
        }
    }

    public void Dispose() => _timer.Dispose();

    private void Show(Action show)
    {
        lock (_lock)
        {
            if (_hasEnded)
            {
                return;
            }

            try
            {
                show();
                _hasShown = true;
            }
            catch (Text.OutputLost)
            {
                // Nobody looks.
                _hasEnded = true;
            }
        }
    }
}
