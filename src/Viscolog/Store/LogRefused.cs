namespace Viscolog.Store;

/// <summary>Why a log can't be opened, on the way to the outcome that says so.</summary>
internal sealed class LogRefused : Exception
{
    public LogRefused(string message)
        : base(message)
    {
    }

    public LogRefused()
    {
    }

    public LogRefused(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
