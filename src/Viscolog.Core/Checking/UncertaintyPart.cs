using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>One part of the uncertainty of a batch's value.</summary>
/// <param name="Name">What it comes from, in a word or two.</param>
/// <param name="Size">Relative standard uncertainty.</param>
/// <param name="ShrinksWithReadings">Whether more readings make it smaller.</param>
/// <param name="Words">How it was worked out.</param>
/// <param name="Remedy">What makes it smaller.</param>
public sealed record UncertaintyPart(string Name, Percentage Size, bool ShrinksWithReadings, string Words, string Remedy);
