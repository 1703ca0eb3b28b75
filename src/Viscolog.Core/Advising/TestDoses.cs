using Viscolog.Core.Inference;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>
/// Finds the dose whose reading teaches most about the curve: the one after which the variance of ln body, averaged over the usual range,
/// is
/// expected to be least (MacKay, Neural Computation 4 (1992) 590–604; Cohn, Neural Networks 9 (1996) 1071–1083; both from memory), the
/// variances taken from the draws.
/// </summary>
public static class TestDoses
{
    private const int Grid = 25;

    /// <summary>Chance of being too stiff to stir from which on a dose is not proposed.</summary>
    private const double TooStiffChance = 0.05;

    /// <summary>A fall of the mean variance below this is not worth a test.</summary>
    private const double LeastGain = 0.02;

    /// <summary>Finds it.</summary>
    /// <param name="posterior">The posterior.</param>
    /// <returns>
    /// Null where no dose above the present one, within the usual range and not too stiff to stir, teaches anything to speak of.
    /// </returns>
    public static TestDose? Next(Posterior posterior)
    {
        var top = posterior.Evidence.Thickener.UsualRange.Top.Percent;
        Dose[] doses = [.. Enumerable.Range(0, Grid + 1).Select(i => Dose.FromPercent(top * i / Grid))];
        double[][] off = [.. doses.Select(d => Centred(posterior.DrawsAt(d)))];
        var total = off.Sum(o => Product(o, o));
        var noise = posterior.Repeatability * posterior.Repeatability;
        var now = posterior.Evidence.Steps[^1].Dose;
        var (best, bestGain) = (-1, LeastGain);
        for (var i = 0; i < doses.Length; i++)
        {
            if (doses[i].Percent <= now || IsTooStiff(posterior, doses[i]))
            {
                continue;
            }

            var gain = off.Sum(o => Product(o, off[i]) * Product(o, off[i])) / (Product(off[i], off[i]) + noise) / total;
            (best, bestGain) = gain > bestGain ? (i, gain) : (best, bestGain);
        }

        return best < 0
            ? null
            : new(doses[best], posterior.BodyAt(doses[best], Study.Level), Percentage.FromFraction(Math.Min(1, bestGain)));
    }

    private static bool IsTooStiff(Posterior posterior, Dose dose)
        => posterior.Evidence.Run.TooStiff is { } stiff && posterior.At(dose).ChanceAbove(stiff.Ln) > TooStiffChance;

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

/// <summary>The dose to test next where the aim is the curve and not a target.</summary>
/// <param name="Dose">The dose.</param>
/// <param name="Expected">The settled body expected there.</param>
/// <param name="Gain">By how much the curve's mean variance over the usual range is expected to fall.</param>
public sealed record TestDose(Dose Dose, Estimate Expected, Percentage Gain);
