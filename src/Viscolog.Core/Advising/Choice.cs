namespace Viscolog.Core.Advising;

/// <summary>The dose that the policy chose.</summary>
/// <param name="DosePercent">The dose to go to, in %.</param>
/// <param name="BestChance">The greatest chance in band among the doses allowed, as a fraction.</param>
/// <param name="Bound">What kept it from being larger.</param>
internal sealed record Choice(double DosePercent, double BestChance, ChoiceBound Bound);
