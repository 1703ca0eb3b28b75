using Viscolog.Core.Quantities;

namespace Viscolog.Core.Curves;

/// <summary>The believed dose–response curve at one dose.</summary>
/// <param name="Dose">The dose.</param>
/// <param name="Body">The settled body: median and band of the mean.</param>
/// <param name="Reading">A single reading of it: the same median and the wider band of a reading.</param>
public sealed record CurveSample(Dose Dose, Estimate Body, Estimate Reading);
