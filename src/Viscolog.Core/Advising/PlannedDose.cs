using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>What is still to come of one thickener, in outline.</summary>
/// <param name="Thickener">Its name.</param>
/// <param name="About">About how much more.</param>
/// <param name="Additions">In about how many additions.</param>
public sealed record PlannedDose(string Thickener, Dose About, int Additions);
