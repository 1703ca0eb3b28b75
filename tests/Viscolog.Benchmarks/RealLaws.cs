using MathNet.Numerics;
using Viscolog.Core.Practice;

namespace Viscolog.Benchmarks;

/// <summary>
/// Laws as real materials have them, drawn over what is published of thickened liquids (exponents of 1 to 5.4 above an overlap, steep and
/// concave gums, thresholds, plateaus, peaks; bases as thin as water). The even kinds are for tuning, the odd ones are kept for judging.
/// </summary>
internal static class RealLaws
{
    private static readonly Func<Random, HiddenLaw>[] Kinds =
        [Overlap, LinearViscosity, ConcaveGum, TwoPowers, Exponential, LateCliff, RiseAndFall, PlateauBetween, ParticleGel, Threshold];

    /// <summary>How many kinds there are.</summary>
    public static int Count => Kinds.Length;

    /// <summary>Draws a law of a kind, from 0.</summary>
    public static HiddenLaw Draw(int kind, Random random) => Kinds[kind](random);

    /// <summary>Almost nothing up to a threshold, then ln(1 + (z − c)/w) to a power.</summary>
    public static HiddenLaw Threshold(Random random)
    {
        var (u0, c, w) = (Base(random), Between(random, 0.05, 0.5), Log(random, 0.01, 0.1));
        var (scale, power) = (Between(random, 0.8, 1.6), Between(random, 0.7, 1.3));
        return new(
            "threshold", z => u0 + (0.2 * z) + (scale * Math.Pow(Math.Log(1 + (Math.Max(0, z - c) / w)), power)))
        { Least = c + 0.02 };
    }

    /// <summary>The same with next to nothing before a threshold that may lie late, and a jump behind it.</summary>
    public static HiddenLaw SharpThreshold(Random random)
    {
        var (u0, c, w) = (Base(random), Between(random, 0.05, 0.7), Log(random, 0.003, 0.03));
        var (scale, power) = (Between(random, 0.6, 1.6), Between(random, 0.7, 1.4));
        return new(
            "sharp threshold",
            z => u0 + (0.05 * z) + (scale * Math.Pow(Math.Log(1 + (Math.Max(0, z - c) / w)), power)))
        { Least = c + 0.02 };
    }

    /// <summary>A power law of concentration above an overlap.</summary>
    private static HiddenLaw Overlap(Random random)
    {
        var (u0, overlap, power) = (Base(random), Log(random, 0.02, 0.3), Between(random, 1.5, 5));
        return new("overlap", z => u0 + Math.Log(1 + Math.Pow(z / overlap, power)));
    }

    private static HiddenLaw LinearViscosity(Random random)
    {
        var (u0, strength) = (Base(random), Log(random, 5, 300));
        return new("linear", z => u0 + Math.Log(1 + (strength * z)));
    }

    private static HiddenLaw ConcaveGum(Random random)
    {
        var (u0, span, place, slope) = (Base(random), Between(random, 2, 4.5), Log(random, 0.04, 0.25), Between(random, 0.5, 2.5));
        return new("concave gum", z => u0 + (span * (1 - Math.Exp(-z / place))) + (slope * z));
    }

    private static HiddenLaw TwoPowers(Random random)
    {
        var (u0, first, second) = (Base(random), Log(random, 0.02, 0.1), Log(random, 0.08, 0.35));
        var (low, high) = (Between(random, 1, 1.6), Between(random, 3, 5.4));
        return new("two powers", z => u0 + Math.Log(1 + Math.Pow(z / first, low) + Math.Pow(z / second, high)));
    }

    private static HiddenLaw Exponential(Random random)
    {
        var (u0, slope) = (Base(random), Log(random, 2, 9));
        return new("exponential", z => u0 + (slope * z));
    }

    private static HiddenLaw LateCliff(Random random)
    {
        var (u0, slope, height) = (Base(random), Between(random, 0.3, 2), Between(random, 2, 5.5));
        var (place, width) = (Between(random, 0.2, 0.75), Between(random, 0.015, 0.08));
        double S(double z) => SpecialFunctions.Logistic((z - place) / width);
        return new("late cliff", z => u0 + (slope * z) + (height * (S(z) - S(0))));
    }

    private static HiddenLaw RiseAndFall(Random random)
    {
        var (u0, height, peak, width) = (Base(random), Between(random, 2.5, 5.5), Between(random, 0.3, 1), Between(random, 0.35, 0.7));
        double G(double z) => Math.Exp(-0.5 * Math.Pow((z - peak) / (width * peak), 2));
        return new("peak", z => u0 + (height * (G(z) - G(0)))) { Useful = Math.Min(1, peak) };
    }

    private static HiddenLaw PlateauBetween(Random random)
    {
        var u0 = Base(random);
        var (first, second) = (Between(random, 1, 3), Between(random, 1.5, 4));
        var (early, place, width) = (Between(random, 0.03, 0.2), Between(random, 0.35, 0.8), Between(random, 0.03, 0.12));
        double S(double z) => SpecialFunctions.Logistic((z - place) / width);
        return new("plateau between", z => u0 + (first * (1 - Math.Exp(-Math.Pow(z / early, 2)))) + (0.3 * z) + (second * (S(z) - S(0))));
    }

    /// <summary>Steep, flatter, steep, flatter, as a particle network is.</summary>
    private static HiddenLaw ParticleGel(Random random)
    {
        var u0 = Base(random);
        double[] z = [0, .1, .25, .5, 1, 1.3];
        var ln = new double[6];
        ln[0] = u0;
        for (var i = 1; i < 6; i++)
        {
            ln[i] = ln[i - 1] + Between(random, 0.2, 1.9);
        }

        return HiddenLaws.Table("particle gel", z, ln);
    }

    private static double Between(Random random, double low, double high) => low + ((high - low) * random.NextDouble());

    private static double Log(Random random, double low, double high) => Math.Exp(Between(random, Math.Log(low), Math.Log(high)));

    private static double Base(Random random) => Math.Log(random.NextDouble() < 0.5 ? Log(random, 1, 60) : Log(random, 60, 3000));
}
