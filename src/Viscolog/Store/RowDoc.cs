namespace Viscolog.Store;

/// <summary>A row in the query copy.</summary>
internal sealed record RowDoc
{
    /// <summary>The run's number in the high half, the row's in the low half: a run's rows lie together.</summary>
    public long Id { get; init; }

    /// <summary>The row that it follows; null where it follows the one logged before.</summary>
    public int? After { get; init; }

    /// <summary>What it says.</summary>
    public StoredRow Is { get; init; } = new();

    /// <summary>Why it counts no more, where that was logged after it.</summary>
    public string? Voided { get; init; }

    /// <summary>The dose in the pot of each thickener after the row, in g per 100 g of base.</summary>
    public Dictionary<string, double> DosesPct { get; init; } = [];

    /// <summary>The row's number in its run.</summary>
    public int Number() => (int)(Id & uint.MaxValue);

    /// <summary>The id of a run's row.</summary>
    public static long IdOf(int run, int row) => ((long)run << 32) | (uint)row;
}
