using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>A weighted sum of normal distributions over one shape's parameters; the weights need not sum to one.</summary>
internal sealed class Mixture(ImmutableArray<GaussianComponent> components)
{
    private readonly double total = components.Sum(c => c.Weight);

    /// <summary>The sum of the weights: the shape's own weight in a prior over shapes.</summary>
    public double Total => total;

    /// <summary>The components.</summary>
    public ImmutableArray<GaussianComponent> Components => components;

    /// <summary>A draw; the component is chosen by <paramref name="place"/> in [0, 1).</summary>
    public void Draw(double place, ReadOnlySpan<double> normals, Span<double> draw)
    {
        var left = place * total;
        var i = 0;
        while (i < components.Length - 1 && left >= components[i].Weight)
        {
            left -= components[i].Weight;
            i++;
        }

        components[i].Draw(normals, draw);
    }

    /// <summary>The part of the density at a place that the first component makes.</summary>
    public double PartOfFirst(ReadOnlySpan<double> at)
    {
        var first = Math.Log(components[0].Weight / total) + components[0].LogDensity(at);
        return Math.Min(1, Math.Exp(first - LogDensity(at)));
    }

    /// <summary>The logarithm of the normalised density.</summary>
    public double LogDensity(ReadOnlySpan<double> at)
    {
        if (components.Length == 1)
        {
            return components[0].LogDensity(at);
        }

        var greatest = double.NegativeInfinity;
        Span<double> logs = stackalloc double[components.Length];
        for (var i = 0; i < logs.Length; i++)
        {
            logs[i] = Math.Log(components[i].Weight / total) + components[i].LogDensity(at);
            greatest = Math.Max(greatest, logs[i]);
        }

        var sum = 0.0;
        foreach (var log in logs)
        {
            sum += Math.Exp(log - greatest);
        }

        return greatest + Math.Log(sum);
    }
}
