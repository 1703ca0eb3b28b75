namespace Viscolog.Core.Quantities;

/// <summary>A dose that is not known exactly.</summary>
/// <param name="Median">As likely to be more as less.</param>
/// <param name="Low">The interval's low end.</param>
/// <param name="High">The interval's high end; null where it lies beyond anything considered.</param>
/// <param name="Level">The chance that the interval holds the dose.</param>
public sealed record DoseEstimate(Dose Median, Dose Low, Dose? High, Percentage Level);
