namespace Viscolog.Core.Measuring;

/// <summary>What came of turning a reading into a quantity. The set of cases is closed.</summary>
public abstract record Conversion
{
    private protected Conversion()
    {
    }

    /// <summary>It became one.</summary>
    /// <param name="Reading">What.</param>
    public sealed record Converted(ConvertedReading Reading) : Conversion;

    /// <summary>It can't.</summary>
    /// <param name="Reason">Why, and what to do.</param>
    public sealed record Refused(string Reason) : Conversion;
}
