using System.Collections.Immutable;

namespace Viscolog.Core.Charting;

/// <summary>What a reader of a control chart must know. The set of cases is closed.</summary>
public abstract record ChartWarning
{
    private protected ChartWarning()
    {
    }

    /// <summary>The limits rest on few batches.</summary>
    /// <param name="Count">So many.</param>
    public sealed record FewBatches(int Count) : ChartWarning;

    /// <summary>Batches of the baseline lie beyond the limits.</summary>
    /// <param name="Batches">Their names; one or more.</param>
    public sealed record BaselineBeyondLimits(ImmutableArray<string> Batches) : ChartWarning;

    /// <summary>The baseline gives signals, so capability means little.</summary>
    public sealed record BaselineSignals : ChartWarning;

    /// <summary>A batch stands there more than once.</summary>
    /// <param name="Batch">Its name.</param>
    public sealed record BatchTwice(string Batch) : ChartWarning;
}
