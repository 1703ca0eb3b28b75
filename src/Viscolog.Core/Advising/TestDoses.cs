using Viscolog.Core.Curves;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>
/// Finds the dose whose reading teaches most about the curve: the one after which the variance of ln body, averaged over the usual range, is
/// expected to be least (MacKay, Neural Computation 4 (1992) 590–604; Cohn, Neural Networks 9 (1996) 1071–1083; both from memory), the
/// variances taken from the believed cases.
/// </summary>
public static class TestDoses
{
    private const int Grid = 25;

    /// <summary>Chance of being too stiff to stir from which on a dose is not proposed.</summary>
    private const double TooStiffChance = 0.05;

    /// <summary>A fall of the mean variance below this is not worth a test.</summary>
    private const double LeastGain = 0.02;

    /// <summary>Finds it.</summary>
    /// <param name="belief">The belief.</param>
    /// <returns>
    /// Null where no dose above the present one, within the usual range and not too stiff to stir, teaches anything to speak of.
    /// </returns>
    public static TestDose? Next(Belief belief)
    {
        var top = belief.Evidence.Thickener.UsualRange.Top.Percent;
        Dose[] doses = [.. Enumerable.Range(0, Grid + 1).Select(i => Dose.FromPercent(top * i / Grid))];
        double[][] off = [.. doses.Select(d => Centred(belief.DrawsAt(d)))];
        var total = off.Sum(o => Product(o, o));
        var noise = belief.Evidence.Repeatability * belief.Evidence.Repeatability;
        var now = belief.Evidence.Steps[^1].Dose;
        var (best, bestGain) = (-1, LeastGain);
        for (var i = 0; i < doses.Length; i++)
        {
            if (doses[i].Percent <= now || IsTooStiff(belief, doses[i]))
            {
                continue;
            }

            var gain = off.Sum(o => Product(o, off[i]) * Product(o, off[i])) / (Product(off[i], off[i]) + noise) / total;
            (best, bestGain) = gain > bestGain ? (i, gain) : (best, bestGain);
        }

        return best < 0 ? null : Told(belief, doses[best], bestGain);
    }

    private static TestDose Told(Belief belief, Dose dose, double gain)
    {
        var part = Percentage.FromFraction(Math.Min(1, gain));
        return new(dose, belief.BodyAt(dose, Advisor.Level), part, FormattableString.Invariant(
            $"A reading there teaches most about the whole curve: the uncertainty (as variance) over the usual range is expected to fall by {part.Percent:0} %. It heeds no target: to bring a pot into a band ask for advice instead."));
    }

    private static bool IsTooStiff(Belief belief, Dose dose)
        => belief.Evidence.Run.TooStiff is { } stiff && belief.At(dose).ChanceAbove(stiff.Ln) > TooStiffChance;

    private static double[] Centred(double[] values)
    {
        var mean = values.Average();
        return [.. values.Select(v => v - mean)];
    }

    private static double Product(double[] left, double[] right)
    {
        var sum = 0.0;
        for (var i = 0; i < left.Length; i++)
        {
            sum += left[i] * right[i];
        }

        return sum / left.Length;
    }
}
