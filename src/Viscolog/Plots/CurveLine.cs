using System.Collections.Immutable;
using Viscolog.Core.Curves;
using Viscolog.Core.Quantities;

namespace Viscolog.Plots;

/// <summary>Values between the samples of a curve, on straight lines of ln viscosity.</summary>
internal static class CurveLine
{
    /// <summary>The value in mPa·s at a dose; null outside the samples.</summary>
    public static double? At(ImmutableArray<CurveSample> curve, double dose, Func<CurveSample, Viscosity> what)
    {
        var next = 0;
        while (next < curve.Length && curve[next].Dose.Percent < dose)
        {
            next++;
        }

        if (next == curve.Length || (next == 0 && curve[0].Dose.Percent > dose))
        {
            return null;
        }

        var right = curve[next];
        if (next == 0 || right.Dose.Percent <= curve[next - 1].Dose.Percent)
        {
            return what(right).MilliPascalSeconds;
        }

        var left = curve[next - 1];
        var part = (dose - left.Dose.Percent) / (right.Dose.Percent - left.Dose.Percent);
        return Math.Exp(what(left).Ln + (part * (what(right).Ln - what(left).Ln)));
    }
}
