using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>The two models of a run with two thickeners, with what the readings leave open of their parameters.</summary>
/// <param name="Shapes">The shapes of the body thickener's curve that matter, heaviest first.</param>
/// <param name="Body">What the body model has beside its shape.</param>
/// <param name="Strings">The string model.</param>
public sealed record PairFit(ImmutableArray<ShapeFit> Shapes, ImmutableArray<FittedParameter> Body, ImmutableArray<FittedParameter> Strings);
