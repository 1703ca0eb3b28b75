namespace Viscolog.Store;

/// <summary>What a log is opened for.</summary>
internal enum LogUse
{
    /// <summary>To look things up; a log is not made, and left as it is where nothing needs mending.</summary>
    Read,

    /// <summary>To add to it; it is made where there is none.</summary>
    Write,
}
