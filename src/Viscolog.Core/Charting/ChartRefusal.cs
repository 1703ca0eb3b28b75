namespace Viscolog.Core.Charting;

/// <summary>Why values can't be charted. The set of cases is closed.</summary>
public abstract record ChartRefusal
{
    private protected ChartRefusal()
    {
    }

    /// <summary>Too few batches tell limits.</summary>
    /// <param name="There">So many are there; limits need <see cref="ControlChart.LeastBaseline"/>.</param>
    public sealed record TooFewBatches(int There) : ChartRefusal;

    /// <summary>All values of the baseline are the same.</summary>
    public sealed record NoScatter : ChartRefusal;

    /// <summary>A value has no logarithm.</summary>
    /// <param name="Point">The value.</param>
    public sealed record NoLogarithm(ChartPoint Point) : ChartRefusal;

    /// <summary>A wanted value has no logarithm.</summary>
    public sealed record WantedNoLogarithm : ChartRefusal;

    /// <summary>The wanted values do not rise.</summary>
    public sealed record WantedTurned : ChartRefusal;

    /// <summary>There is no such batch to leave out.</summary>
    /// <param name="Batch">Its name.</param>
    public sealed record NoSuchBatch(string Batch) : ChartRefusal;
}
