using System.Collections.Immutable;

namespace Viscolog.Core.Flow;

/// <summary>
/// What the laws with two plateaus have in common: first plateau, time, index, and the last plateau unless it is left out.
/// </summary>
internal static class Plateaus
{
    private static readonly double[] FirstParts = [1.1, 2];

    public static FlowQuantity LastQuantity { get; } = new("infinite_shear_pas", "infinite-shear viscosity", "Pa·s", ParameterScale.Plain)
    {
        MayBeNone = true,
    };

    public static ImmutableArray<FlowQuantity> Quantities(bool isReduced, ParameterScale index)
    {
        ImmutableArray<FlowQuantity> three =
        [
            new("zero_shear_pas", "zero-shear viscosity", "Pa·s", ParameterScale.Logarithm),
            new("time_s", "time", "s", ParameterScale.Logarithm),
            new("index", "index", "1", index),
        ];
        return isReduced ? three : three.Add(LastQuantity);
    }

    /// <summary>A grid of times and indices; the plateaus a little beyond what was seen.</summary>
    public static IEnumerable<double[]> Starts(FlowOutline outline, bool isReduced, double[] indices)
        => from time in outline.LnTimes(9)
           from index in indices
           from first in FirstParts
           select isReduced
               ? new[] { Math.Log(first * outline.MostViscosity), time, index }
               : [Math.Log(first * outline.MostViscosity), time, index, 0.8 * outline.LeastViscosity];
}
