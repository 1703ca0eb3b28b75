namespace Viscolog.Store;

/// <summary>A material in the query copy.</summary>
internal sealed record MaterialDoc
{
    /// <summary>Kind and name.</summary>
    public string Id { get; init; } = "";

    public string Kind { get; init; } = "";

    public string Name { get; init; } = "";

    /// <summary>The cells of its row in a materials file, by column.</summary>
    public Dictionary<string, string> Cells { get; init; } = [];

    /// <summary>When it was last stated, ISO 8601.</summary>
    public string Last { get; init; } = "";
}
