using System.Collections.Immutable;

namespace Viscolog.Core.Sampling;

/// <summary>From weighted draws of several kinds to equally likely ones.</summary>
internal static class Resampling
{
    /// <summary>Weights that sum to 1, from the logarithms of how likely each kind is, and the logarithm of their sum.</summary>
    public static (ImmutableArray<double> Weights, double LogSum) Weigh(double[] logs)
    {
        var greatest = logs.Max();
        var weights = double.IsNegativeInfinity(greatest) ? [.. logs.Select(_ => 1.0)] : logs.Select(l => Math.Exp(l - greatest)).ToArray();
        var sum = weights.Sum();
        return ([.. weights.Select(w => w / sum)], greatest + Math.Log(sum));
    }

    /// <summary>Systematic resampling (Kitagawa, Journal of Computational and Graphical Statistics 5 (1996) 1–25).</summary>
    /// <param name="draws">Draws of each kind.</param>
    /// <param name="kinds">The weight of each kind.</param>
    /// <param name="count">How many to keep.</param>
    /// <param name="make">Makes what is kept of a row of a kind.</param>
    public static ImmutableArray<T> Of<T>(WeightedSample[] draws, ImmutableArray<double> kinds, int count, Func<int, double[], T> make)
        where T : class
    {
        var kept = ImmutableArray.CreateBuilder<T>(count);
        var passed = 0.0;
        for (var s = 0; s < draws.Length; s++)
        {
            var weights = draws[s].Weights();
            for (var i = 0; i < weights.Length; i++)
            {
                passed += weights[i] * kinds[s];
                T? made = null;
                while (kept.Count < count && (kept.Count + 0.5) / count < passed)
                {
                    made ??= make(s, draws[s].Row(i).ToArray());
                    kept.Add(made);
                }
            }
        }

        while (kept.Count < count)
        {
            kept.Add(kept[^1]);
        }

        return kept.ToImmutable();
    }
}
