using System.Collections.Immutable;

namespace Viscolog.Core.Flow;

/// <summary>What the points look like at first sight; fits start from it.</summary>
internal sealed class FlowOutline
{
    public FlowOutline(ImmutableArray<FlowPoint> points)
    {
        Rates = [.. points.Select(p => p.Rate.PerSecond)];
        Stresses = [.. points.Select(p => p.Stress.Pascals)];
        LeastStress = Stresses.Min();
        (LeastRate, MostRate) = (Rates.Min(), Rates.Max());
        double[] viscosities = [.. Stresses.Select((s, i) => s / Rates[i])];
        (LeastViscosity, MostViscosity) = (viscosities.Min(), viscosities.Max());
    }

    public ImmutableArray<double> Rates { get; }

    public ImmutableArray<double> Stresses { get; }

    public double LeastStress { get; }

    public double LeastRate { get; }

    public double MostRate { get; }

    public double LeastViscosity { get; }

    public double MostViscosity { get; }

    /// <summary>Straight line of ln(stress − yield) over ln(rate): ln K and n.</summary>
    /// <param name="yield">Below the least stress.</param>
    public (double LnConsistency, double Index) PowerLaw(double yield)
    {
        var (x, y) = (Rates.Average(Math.Log), Stresses.Average(s => Math.Log(s - yield)));
        var (xx, xy) = (0.0, 0.0);
        for (var i = 0; i < Rates.Length; i++)
        {
            var dx = Math.Log(Rates[i]) - x;
            xx += dx * dx;
            xy += dx * (Math.Log(Stresses[i] - yield) - y);
        }

        var n = xx > 0 ? xy / xx : 1;
        return (y - (n * x), n);
    }

    /// <summary>Places for a time constant: one over rates spread evenly on the scale of ln rate, a little beyond the data.</summary>
    public IEnumerable<double> LnTimes(int count)
    {
        var (low, high) = (Math.Log(LeastRate / 3), Math.Log(MostRate * 3));
        return Enumerable.Range(0, count).Select(i => -(low + ((high - low) * i / (count - 1))));
    }
}
