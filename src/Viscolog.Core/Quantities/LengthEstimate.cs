namespace Viscolog.Core.Quantities;

/// <summary>A length that is not known exactly: its median and an interval that holds it with a stated chance.</summary>
/// <param name="Median">As likely to be above as below.</param>
/// <param name="Low">The interval's low end.</param>
/// <param name="High">The interval's high end.</param>
/// <param name="Level">The chance that the interval holds the value.</param>
public sealed record LengthEstimate(Length Median, Length Low, Length High, Percentage Level);
