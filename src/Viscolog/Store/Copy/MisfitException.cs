namespace Viscolog.Store.Copy;

/// <summary>A record whose text is whole does not fit what stands before it.</summary>
internal sealed class MisfitException : Exception
{
    public MisfitException(string message)
        : base(message)
    {
    }

    public MisfitException()
    {
    }

    public MisfitException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
