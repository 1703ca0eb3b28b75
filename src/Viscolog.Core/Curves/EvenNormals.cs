using MathNet.Numerics.Distributions;

namespace Viscolog.Core.Curves;

/// <summary>Normal quantiles at evenly spread places, one for each believed case.</summary>
internal static class EvenNormals
{
    private static readonly double[] Values = [.. Enumerable.Range(0, BeliefSettings.Cases).Select(i => Normal.InvCDF(0, 1, Normals.EvenPlace(i)))];

    /// <summary>The value for a case.</summary>
    public static double At(int index) => Values[index % Values.Length];
}
