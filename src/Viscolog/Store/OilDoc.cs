namespace Viscolog.Store;

/// <summary>A reading of a certified oil in the query copy.</summary>
internal sealed record OilDoc
{
    /// <summary>Its number, from 1.</summary>
    public int Id { get; init; }

    /// <summary>The cells of its row in an oils file, by column.</summary>
    public Dictionary<string, string> Cells { get; init; } = [];

    /// <summary>Why it counts no more; null while it counts.</summary>
    public string? Voided { get; init; }

    /// <summary>When it was logged or made void, ISO 8601.</summary>
    public string Last { get; init; } = "";
}
