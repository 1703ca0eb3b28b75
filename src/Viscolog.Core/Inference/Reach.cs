using System.Collections.Immutable;
using Viscolog.Core.Quantities;
using Viscolog.Core.Sampling;

namespace Viscolog.Core.Inference;

/// <summary>For each draw the dose that first brings the body of a pot with one thickener up to a value.</summary>
internal sealed class Reach
{
    private const int Grid = 60;

    private readonly double _rangeTop;
    private readonly double[] _sorted;

    public Reach(ImmutableArray<BodyDraw> draws, double rangeTop, Viscosity body)
    {
        _rangeTop = rangeTop;
        _sorted = [.. draws.Select((draw, i) => First(draw, body.Ln, EvenNormals.At(i))).Order()];
    }

    /// <summary>The dose; null where the body is not expected to be reached.</summary>
    public DoseEstimate? Dose(Percentage level)
    {
        double Quantile(double part) => _sorted[(int)Math.Clamp(part * _sorted.Length, 0, _sorted.Length - 1)];
        Dose? At(double part) => double.IsInfinity(Quantile(part)) ? null : Quantities.Dose.FromPercent(Quantile(part) * _rangeTop);
        return At(0.5) is { } median ? new(median, At((1 - level.Fraction) / 2) ?? median, At((1 + level.Fraction) / 2), level) : null;
    }

    /// <summary>The chance that the body comes up to the value at some dose within a limit.</summary>
    public Percentage ChanceWithin(Dose limit)
    {
        var most = limit.Percent / _rangeTop;
        return Percentage.FromFraction((double)_sorted.Count(d => d <= most) / _sorted.Length);
    }

    /// <summary>The dose over the range top; infinite where the draw does not get there. Straight between the places of a grid.</summary>
    private static double First(BodyDraw draw, double ln, double deviate)
    {
        double Excess(double dose)
        {
            var (mean, variance) = draw.At(dose, 0);
            return mean + (deviate * Math.Sqrt(variance)) - ln;
        }

        var before = Excess(0);
        if (before >= 0)
        {
            return 0;
        }

        for (var i = 1; i <= Grid; i++)
        {
            var after = Excess(Posterior.SoughtUpTo * i / Grid);
            if (after >= 0)
            {
                return Posterior.SoughtUpTo * (i - 1 + (before / (before - after))) / Grid;
            }

            before = after;
        }

        return double.PositiveInfinity;
    }
}
