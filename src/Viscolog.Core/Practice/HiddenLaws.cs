namespace Viscolog.Core.Practice;

/// <summary>Draws hidden laws from families of our own, some of which no shape of the program can reproduce.</summary>
public static class HiddenLaws
{
    private static readonly Func<Random, HiddenLaw>[] Families =
        [Steady, Late, Saturating, TwoSteps, Growth, Kinked, RiseAndFall, Step, Uneven];

    /// <summary>How many families there are.</summary>
    public static int FamilyCount => Families.Length;

    /// <summary>Draws a law.</summary>
    /// <param name="family">Which family, from 0.</param>
    /// <param name="random">Seeded by the caller.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such family.</exception>
    public static HiddenLaw Draw(int family, Random random)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(family);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(family, Families.Length);
        return Families[family](random);
    }

    /// <summary>A law through given points, straight in ln between them and straight on beyond the last.</summary>
    /// <param name="family">The family's name.</param>
    /// <param name="z">Doses over the range top, rising from 0; at least two.</param>
    /// <param name="lnBody">ln of the body in mPa·s at each.</param>
    /// <exception cref="ArgumentException">Fewer than two points, or as many doses as bodies are not there.</exception>
    public static HiddenLaw Table(string family, IReadOnlyList<double> z, IReadOnlyList<double> lnBody)
    {
        if (z.Count < 2 || z.Count != lnBody.Count)
        {
            throw new ArgumentException("two points or more, each with a dose and a body", nameof(z));
        }

        return new(family, dose =>
        {
            var right = 1;
            while (right < z.Count - 1 && z[right] < dose)
            {
                right++;
            }

            return lnBody[right - 1] + ((lnBody[right] - lnBody[right - 1]) * (dose - z[right - 1]) / (z[right] - z[right - 1]));
        });
    }

    private static double Between(Random random, double low, double high) => low + ((high - low) * random.NextDouble());

    private static double Base(Random random) => Math.Log(Between(random, 300, 3000));

    private static HiddenLaw Steady(Random random)
    {
        var (u0, slope) = (Base(random), Between(random, 2.5, 5));
        var bend = Between(random, -0.2, 0.25) * slope;
        return new("steady", z => u0 + (slope * z) - (bend * z * z));
    }

    private static HiddenLaw Late(Random random)
    {
        var (u0, span, half, steep) = (Base(random), Between(random, 2.8, 5), Between(random, 0.25, 0.6), Between(random, 1.8, 4.5));
        return new("late", z => u0 + (z <= 0 ? 0 : span / (1 + Math.Pow(half / z, steep))));
    }

    private static HiddenLaw Saturating(Random random)
    {
        var (u0, span, scale) = (Base(random), Between(random, 3, 5), Between(random, 0.25, 0.6));
        return new("saturating", z => u0 + (span * (1 - Math.Exp(-z / scale))));
    }

    private static HiddenLaw TwoSteps(Random random)
    {
        var u0 = Base(random);
        var (first, second) = (Between(random, 0.7, 1.6), Between(random, 1.8, 3.2));
        var (early, place, width) = (Between(random, 0.08, 0.2), Between(random, 0.45, 0.75), Between(random, 0.04, 0.12));
        return new("two-step", z =>
            u0 + (first * Math.Tanh(z / early)) + (second * (Normal((z - place) / width) - Normal(-place / width))));
    }

    private static HiddenLaw Growth(Random random)
    {
        var (u0, span, place, rate) = (Base(random), Between(random, 3, 5), Between(random, 0.2, 0.45), Between(random, 3.5, 7));
        double G(double z) => Math.Exp(-Math.Exp(-rate * (z - place)));
        return new("growth", z => u0 + (span * (G(z) - G(0))));
    }

    private static HiddenLaw Kinked(Random random)
    {
        var u0 = Base(random);
        double[] slopes = [.. Enumerable.Range(0, 6).Select(_ => Between(random, 0.5, 7))];
        return new("kinked", z =>
        {
            var (sum, left) = (u0, z);
            for (var i = 0; i < slopes.Length; i++)
            {
                var part = i == slopes.Length - 1 ? left : Math.Min(left, 0.2);
                sum += slopes[i] * part;
                left -= part;
            }

            return sum;
        });
    }

    private static HiddenLaw RiseAndFall(Random random)
    {
        var (u0, height, peak, power) = (Base(random), Between(random, 2, 4.5), Between(random, 0.6, 1.2), Between(random, 1.1, 2));
        return new("rise-and-fall", z => u0 + (height * Math.Exp(power * (Math.Log(Math.Max(z, 1e-9) / peak) + 1 - (z / peak)))))
        {
            Useful = Math.Min(1, peak),
        };
    }

    private static HiddenLaw Step(Random random)
    {
        var (u0, slope, span) = (Base(random), Between(random, 0.5, 1.5), Between(random, 1.5, 3));
        var (place, width) = (Between(random, 0.3, 0.7), Between(random, 0.02, 0.06));
        return new("step", z => u0 + (slope * z) + (span * (Math.Atan((z - place) / width) + Math.Atan(place / width)) / Math.PI));
    }

    private static HiddenLaw Uneven(Random random)
    {
        var u0 = Base(random);
        var (z, ln) = (new double[11], new double[11]);
        ln[0] = u0;
        var steady = Between(random, 0.2, 0.5);
        for (var i = 1; i < z.Length; i++)
        {
            (z[i], ln[i]) = (i / 10.0, ln[i - 1] + (steady * Between(random, 0.3, 1.7)));
        }

        return Table("table", z, ln);
    }

    private static double Normal(double t) => MathNet.Numerics.Distributions.Normal.CDF(0, 1, t);
}

/// <summary>A hidden dose–response law: ln of the body in mPa·s over z, dose divided by the top of the usual range.</summary>
/// <param name="Family">The family's name, shown when the pot is revealed.</param>
/// <param name="LnBody">The law; z from 0 on.</param>
public sealed record HiddenLaw(string Family, Func<double, double> LnBody)
{
    /// <summary>The dose over the range top up to which more thickener gives more body; 1 for laws that rise throughout.</summary>
    public double Useful { get; init; } = 1;

    /// <summary>
    /// The dose over the range top below which more thickener gives hardly any body; 0 for laws that rise from the start.
    /// </summary>
    public double Least { get; init; }
}
