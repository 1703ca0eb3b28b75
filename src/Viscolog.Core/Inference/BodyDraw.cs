using Viscolog.Core.Curves;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Inference;

/// <summary>One draw of the body over the doses, with what the readings leave of its level.</summary>
internal abstract class BodyDraw
{
    /// <summary>Place of the shape in <see cref="Shapes.All"/>.</summary>
    public required int ShapeIndex { get; init; }

    /// <summary>The build-up.</summary>
    public required Kinetics Kinetics { get; init; }

    /// <summary>Standard deviation of a reading, in ln units.</summary>
    public required double Repeatability { get; init; }

    /// <summary>In K, by how much the temperature coefficient differs from the one that the readings were corrected with.</summary>
    public required double CoefficientOff { get; init; }

    /// <summary>Change of each step from its start to its settled value, in ln units, in order of time.</summary>
    public required double[] Changes { get; init; }

    /// <summary>Dose over the range top at which the shape is greatest; null for a shape that keeps rising.</summary>
    public abstract double? PeakDose { get; }

    /// <summary>Mean and variance of the settled ln body at doses over the range tops; the second is 0 with one thickener.</summary>
    public abstract (double Mean, double Variance) At(double body, double strings);
}
