using Viscolog.Store.Journal;

namespace Viscolog.Cli.Calls;

/// <summary>Tells on standard error how far a job has come, once it takes longer than a second.</summary>
internal sealed class ProgressLine(CallOutput terminal, TimeProvider clock, bool quiet) : IProgress<LogProgress>, IDisposable
{
    private static readonly TimeSpan First = TimeSpan.FromSeconds(1);

    private long _next = clock.GetTimestamp() + (long)(First.TotalSeconds * clock.TimestampFrequency);

    public void Report(LogProgress value)
    {
        if (quiet || clock.GetTimestamp() < _next)
        {
            return;
        }

        // A terminal's line is written over; a file gets a line now and then.
        _next = clock.GetTimestamp() + (long)((terminal.HasLiveErrors ? 0.2 : 5) * clock.TimestampFrequency);
        var done = value.Total > 0
            ? FormattableString.Invariant($"{100.0 * value.Done / value.Total:0} %")
            : FormattableString.Invariant($"{value.Done}");
        terminal.Status(value is { Total: 0, Done: 0 } ? value.Doing : $"{value.Doing}: {done}");
    }

    /// <summary>Takes the line away.</summary>
    public void Dispose() => terminal.ClearStatus();
}
