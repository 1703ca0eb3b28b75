using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Body and string over the dose of one of two thickeners, the other's dose staying where it is.</summary>
/// <param name="Thickener">Its name.</param>
/// <param name="Other">The other's name.</param>
/// <param name="OtherDose">The other's dose.</param>
/// <param name="Samples">In rising order of dose.</param>
public sealed record PairSlice(string Thickener, string Other, Dose OtherDose, ImmutableArray<PairSample> Samples);
