namespace Viscolog.Core.Advising;

/// <summary>One addition that the policy considers or chose.</summary>
/// <param name="IsString">Whether it is of the thickener that brings the string.</param>
/// <param name="DosePercent">The dose to go to, in %.</param>
/// <param name="BestBoth">The greatest chance of both in band among the doses allowed, as a fraction.</param>
/// <param name="Bound">What kept it from being larger.</param>
internal sealed record PairChoice(bool IsString, double DosePercent, double BestBoth, PairBound Bound);
