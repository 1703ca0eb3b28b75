using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>A place on the way to a batch's final doses.</summary>
/// <param name="Fraction">The part of every final dose that is in then; above 0, at most 1.</param>
/// <param name="Standing">Standing before the reading; null where nothing tells.</param>
/// <param name="Expected">The settled body expected; null where nothing tells.</param>
internal sealed record BatchStage(double Fraction, TimeSpan? Standing, Estimate? Expected)
{
    /// <summary>The chance of being over the band then; null where nothing tells.</summary>
    public Percentage? ChanceOver { get; init; }
}
