namespace Viscolog.Core.Curves;

/// <summary>How likely the readings are under one draw of parameters, as a logarithm up to a constant; negative infinity where they can't be.</summary>
/// <param name="draw">The draw.</param>
internal delegate double DrawLikelihood(ReadOnlySpan<double> draw);
