namespace Viscolog.Core.Advising;

/// <summary>Something that is not known exactly, in the unit that its holder states.</summary>
/// <param name="Median">As likely to be above as below.</param>
/// <param name="Low">The interval's low end.</param>
/// <param name="High">Its high end; null where it lies beyond what is considered.</param>
public sealed record Spread(double Median, double Low, double? High)
{
    /// <summary>The same times a factor above 0.</summary>
    public Spread Times(double factor) => new(Median * factor, Low * factor, High * factor);
}
