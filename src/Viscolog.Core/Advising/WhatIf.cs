using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>What to expect of an addition that somebody asks about, advised or not.</summary>
/// <param name="Poured">Grams to pour, dilution water included.</param>
/// <param name="Increment">The thickener in it, over the base now in the pot.</param>
/// <param name="After">The dose after it.</param>
/// <param name="Expected">The settled body expected.</param>
/// <param name="ChanceInBand">Chance that it ends in band.</param>
/// <param name="ChanceOver">Chance that it ends over the band.</param>
/// <param name="Notes">In words: whether the risk, the dose limit and the largest single step are kept.</param>
public sealed record WhatIf(
    Mass Poured, Dose Increment, Dose After, Estimate Expected, Percentage ChanceInBand, Percentage ChanceOver, ImmutableArray<string> Notes);
