using Viscolog.Core.Inference;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Sampling;

namespace Viscolog.Core.Advising;

/// <summary>Which pairs of doses bring body and string to their aims, case by case of a posterior.</summary>
internal static class PairDoses
{
    private const int Cases = 100;

    /// <summary>Draws; null where a case does not get there within 1.2 of the usual ranges.</summary>
    public static IEnumerable<Doses?> Draws(Posterior posterior, ViscosityBand body, StringBand strings)
    {
        var aim = Math.Log(Math.Sqrt(Math.Max(strings.Low.Millimeters, strings.High.Millimeters / 4) * strings.High.Millimeters));
        for (var i = 0; i < Cases; i++)
        {
            // Body and string are independent given the readings: any case of the one goes with any of the other.
            var (b, s) = (posterior.Bodies[5 * i], posterior.Strings[((5 * i * 37) + 11) % posterior.Strings.Length]);
            var (first, second) = (0.0, 0.0);
            for (var round = 0; round < 3; round++)
            {
                var at = first;
                second = First(z => Value(s.At(at, z), EvenNormals.At(i)) >= aim);
                var over = Math.Min(second, Posterior.SoughtUpTo);
                first = First(z => Value(b.At(z, over), EvenNormals.At(i + (Cases / 2))) >= body.Aim.Ln);
            }

            yield return double.IsInfinity(first) || double.IsInfinity(second)
                ? null
                : new(Dose.FromPercent(first * posterior.Evidence.RangeTop), Dose.FromPercent(second * posterior.Evidence.StringTop));
        }
    }

    /// <summary>Median and the interval that holds 9 times in 10.</summary>
    public static Spread Spread(double[] values)
    {
        Array.Sort(values);
        double At(double part) => values[(int)Math.Clamp(part * values.Length, 0, values.Length - 1)];
        return new(At(0.5), At(0.05), double.IsInfinity(At(0.95)) ? null : At(0.95));
    }

    private static double Value((double Mean, double Variance) at, double deviate) => at.Mean + (deviate * Math.Sqrt(at.Variance));

    private static double First(Func<double, bool> reached)
    {
        const int grid = 30;
        const int halvings = 10;
        if (reached(0))
        {
            return 0;
        }

        var (before, after) = Threshold.Of(0, Posterior.SoughtUpTo, reached, grid, halvings);
        return before < after ? after : double.PositiveInfinity;
    }
}
