using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>One shape fitted to a run by least squares under the weak priors.</summary>
/// <param name="Shape">The shape.</param>
/// <param name="Weight">Its weight in the belief, 0 to 1.</param>
/// <param name="Parameters">The base's body, the shape's parameters and, where waits were logged, the time constant.</param>
/// <param name="Aicc">Akaike's criterion with the small-sample correction (Hurvich and Tsai, Biometrika 76 (1989) 297–307), the repeatability taken as known; null with too few readings.</param>
/// <param name="ResidualRepeatability">Relative standard deviation of the readings about the curve, as a fraction; null without degrees of freedom.</param>
/// <param name="LackOfFitChance">p of the lack-of-fit test against repeat readings; null where there are none.</param>
/// <param name="Trouble">Why the fit is not to be trusted; null where it is.</param>
public sealed record ShapeFit(
    Shape Shape,
    double Weight,
    ImmutableArray<FittedParameter> Parameters,
    double? Aicc,
    double? ResidualRepeatability,
    double? LackOfFitChance,
    string? Trouble);
