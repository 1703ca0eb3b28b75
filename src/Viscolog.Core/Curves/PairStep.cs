using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>A step of a run with two thickeners.</summary>
/// <param name="Body">The step as the body's curve sees it; its dose is that of the thickener that makes the body.</param>
/// <param name="StringDose">Dose of the thickener that brings the string, in g per 100 g of base.</param>
/// <param name="Strings">Readings of string, in order.</param>
internal sealed record PairStep(EvidenceStep Body, double StringDose, ImmutableArray<StringReading> Strings);
