using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>The shapes in use. A new shape is added here and nowhere else.</summary>
public static class Shapes
{
    /// <summary>Every shape, in the order of reports.</summary>
    public static ImmutableArray<Shape> All { get; } =
    [
        new ExponentialShape(),
        new LogQuadraticShape(),
        new SigmoidShape(),
        new OnsetShape(),
        new SaturatingShape(),
        new TwoStageShape(),
        new SteepStepShape(),
        new CrowdingShape(),
        new UnevenShape(),
    ];
}
