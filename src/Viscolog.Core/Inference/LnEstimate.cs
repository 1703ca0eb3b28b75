using System.Collections.Immutable;
using Viscolog.Core.Quantities;
using Viscolog.Core.Sampling;

namespace Viscolog.Core.Inference;

/// <summary>A mixture of normal distributions of ln body or ln string, one for each draw, and what can be asked of it.</summary>
internal sealed class LnEstimate
{
    /// <summary>So many standard deviations off, the chance is 0 or 1 to all digits that matter.</summary>
    private const double Far = 6;

    private readonly double[] _means;
    private readonly double[] _sds;
    private double[]? _sorted;

    public LnEstimate(double[] means, double[] sds) => (_means, _sds) = (means, sds);

    /// <summary>What draws say together, each its mean and variance.</summary>
    public static LnEstimate Of<T>(ImmutableArray<T> draws, Func<T, (double Mean, double Variance)> at)
    {
        var (means, sds) = (new double[draws.Length], new double[draws.Length]);
        for (var i = 0; i < means.Length; i++)
        {
            var (mean, variance) = at(draws[i]);
            (means[i], sds[i]) = (mean, Math.Sqrt(variance));
        }

        return new(means, sds);
    }

    /// <summary>The mean: near the median, and quicker where many are wanted.</summary>
    public double Mean => _means.Average();

    /// <summary>The chance that the value lies above a bound on the ln scale.</summary>
    public double ChanceAbove(double ln)
    {
        var sum = 0.0;
        for (var i = 0; i < _means.Length; i++)
        {
            var off = _means[i] - ln;
            var wide = Far * _sds[i];
            sum += off >= wide ? 1 : off <= -wide ? 0 : NormalTable.Below(off / _sds[i]);
        }

        return sum / _means.Length;
    }

    /// <summary>The chance that the value lies within two bounds on the ln scale.</summary>
    public double ChanceWithin(double low, double high) => Math.Max(0, ChanceAbove(low) - ChanceAbove(high));

    /// <summary>The same with every value blurred by a further normal error.</summary>
    public LnEstimate Blurred(double sd) => new(_means, [.. _sds.Select(s => Math.Sqrt((s * s) + (sd * sd)))]);

    /// <summary>The value below which the stated part of the posterior lies.</summary>
    public double Quantile(double part)
    {
        if (_sorted is null)
        {
            _sorted = new double[_means.Length];
            for (var i = 0; i < _means.Length; i++)
            {
                // One evenly placed value a draw stands for the draw's whole spread.
                _sorted[i] = _means[i] + (_sds[i] * EvenNormals.At(i));
            }

            Array.Sort(_sorted);
        }

        var place = Math.Clamp((part * _sorted.Length) - 0.5, 0, _sorted.Length - 1);
        var below = (int)place;
        var above = Math.Min(below + 1, _sorted.Length - 1);
        return _sorted[below] + ((place - below) * (_sorted[above] - _sorted[below]));
    }

    /// <summary>Median and the central interval of a level, kept within what could be a viscosity at all: 1 nPa·s to 1 TPa·s.</summary>
    public Estimate ToEstimate(Percentage level) => new(
        Bounded(Quantile(0.5)),
        Bounded(Quantile((1 - level.Fraction) / 2)),
        Bounded(Quantile((1 + level.Fraction) / 2)),
        level);

    /// <summary>The same as lengths, kept within 1 nm and 1 km.</summary>
    public LengthEstimate ToLengths(Percentage level) => new(
        Length(Quantile(0.5)), Length(Quantile((1 - level.Fraction) / 2)), Length(Quantile((1 + level.Fraction) / 2)), level);

    private static Length Length(double ln) => Quantities.Length.FromMillimeters(Math.Exp(Math.Clamp(ln, Math.Log(1e-6), Math.Log(1e6))));

    private static Viscosity Bounded(double ln) => Viscosity.FromLn(Math.Clamp(ln, Math.Log(1e-6), Math.Log(1e15)));
}
