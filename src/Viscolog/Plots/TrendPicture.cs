using Viscolog.Core.Checking;

namespace Viscolog.Plots;

/// <summary>A control chart with the words that its pictures need.</summary>
/// <param name="Title">What the batches are of.</param>
/// <param name="Quantity">What was read, with its unit.</param>
/// <param name="Chart">The chart.</param>
internal sealed record TrendPicture(string Title, string Quantity, ControlChart Chart)
{
    /// <summary>Whether the chart is on the log scale; then moving ranges are shown as a change in per cent.</summary>
    public bool IsLog => Chart.Scale == ChartScale.Log;

    /// <summary>What the moving ranges are.</summary>
    public string RangeQuantity => IsLog ? "Moving range, %" : "Moving range";

    /// <summary>A moving range as it is shown.</summary>
    public double ShownRange(double range) => IsLog ? 100 * (Math.Exp(range) - 1) : range;

    /// <summary>Whether a point gives a signal.</summary>
    public bool HasSignal(int place) => Chart.Signals.Any(s => s.Place == place);

    /// <summary>The least and the greatest level that the upper panel shows.</summary>
    public (double Low, double High) Window()
    {
        double[] all = [.. Chart.Points.Select(p => p.Value), Chart.Lower, Chart.Upper, .. new[] { Chart.Low, Chart.High }.OfType<double>()];
        var (low, high) = (all.Min(), all.Max());
        if (IsLog)
        {
            var factor = Math.Exp(0.1 * Math.Log(high / low));
            return (low / factor, high * factor);
        }

        var pad = 0.1 * (high - low);
        return (low - pad, high + pad);
    }

    /// <summary>The greatest moving range that the lower panel shows, as shown.</summary>
    public double GreatestRange() => 1.1 * Chart.MovingRanges.OfType<double>().Append(Chart.MovingRangeUpper).Max(ShownRange);
}
