using Viscolog.Core.Curves;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Finds the dose beyond which more is wrong: the least of several limits, with its reason.</summary>
internal static class DoseLimits
{
    private const int Grid = 50;

    /// <summary>More is no use where the curve's slope is under this part of its greatest (common practice, no source).</summary>
    private const double FlatPart = 0.25;

    /// <summary>Weight from which on a rise-and-fall shape is taken seriously.</summary>
    private const double PeakWeight = 0.2;

    /// <summary>Finds the limit.</summary>
    /// <param name="belief">The belief.</param>
    /// <param name="aim">The wanted body; null where there is none. A curve that flattens only on the way past it sets no limit.</param>
    public static DoseLimit Of(Belief belief, Viscosity? aim)
    {
        var top = belief.Evidence.Thickener.UsualRange.Top.Percent;
        var medians = new double[Grid + 1];
        for (var i = 0; i <= Grid; i++)
        {
            medians[i] = belief.At(Dose.FromPercent(top * i / Grid)).Quantile(0.5);
        }

        var limit = new DoseLimit(Dose.FromPercent(top), FormattableString.Invariant($"the usual range ends at {top:0.##} %"));
        limit = Least(limit, Flattening(medians, top, aim));
        limit = Least(limit, Peak(belief, top));
        return Least(limit, Stiffness(medians, top, belief.Evidence.Run.TooStiff));
    }

    private static DoseLimit Least(DoseLimit left, DoseLimit? right) => right is not null && right.Dose < left.Dose ? right : left;

    private static DoseLimit? Flattening(double[] medians, double top, Viscosity? aim)
    {
        var greatest = 0.0;
        var lastSteep = 0;
        for (var i = 0; i < Grid; i++)
        {
            greatest = Math.Max(greatest, medians[i + 1] - medians[i]);
        }

        for (var i = 0; i < Grid; i++)
        {
            lastSteep = medians[i + 1] - medians[i] >= FlatPart * greatest ? i + 1 : lastSteep;
        }

        if (lastSteep >= Grid || lastSteep == 0)
        {
            return null;
        }

        var reachedLater = aim is { } wanted && medians[lastSteep] < wanted.Ln && medians[lastSteep..].Max() >= wanted.Ln;
        var dose = top * lastSteep / Grid;
        return reachedLater
            ? null
            : new(Dose.FromPercent(dose), FormattableString.Invariant($"the curve flattens from {dose:0.0#} %: more buys little body, only water sensitivity and cost"));
    }

    private static DoseLimit? Peak(Belief belief, double top)
    {
        var rising = Shapes.All.IndexOf(Shapes.All.First(s => s is LogQuadraticShape));
        if (belief.ShapeWeights[rising] <= PeakWeight)
        {
            return null;
        }

        var peaks = belief.Cases.Where(c => c.ShapeIndex == rising).Select(c => c.PeakDose()).Order().ToArray();
        if (peaks.Length == 0 || peaks[peaks.Length / 2] >= 1)
        {
            return null;
        }

        var dose = top * peaks[peaks.Length / 2];
        return new(Dose.FromPercent(dose), FormattableString.Invariant($"the body may peak near {dose:0.0#} % and fall beyond it"));
    }

    private static DoseLimit? Stiffness(double[] medians, double top, Viscosity? tooStiff)
    {
        if (tooStiff is not { } stiff)
        {
            return null;
        }

        var first = Array.FindIndex(medians, m => m > stiff.Ln);
        if (first < 0)
        {
            return null;
        }

        var dose = top * Math.Max(0, first - 1) / Grid;
        return new(Dose.FromPercent(dose), FormattableString.Invariant($"from {dose:0.0#} % on the pot is expected to be too stiff to stir"));
    }
}
