namespace Viscolog.Store;

/// <summary>A run in the query copy.</summary>
internal sealed record RunDoc
{
    /// <summary>The run's number, from 1.</summary>
    public int Id { get; init; }

    /// <summary>The run's UUID.</summary>
    public string Uuid { get; init; } = "";

    /// <summary>What runs from files without a UUID are told apart by (<see cref="RunIdentity.Key"/>).</summary>
    public string Key { get; init; } = "";

    public string? Name { get; init; }

    public string? Base { get; init; }

    public string[] Thickeners { get; init; } = [];

    /// <summary>The base with each thickener, to find runs by.</summary>
    public string[] Pairs { get; init; } = [];

    /// <summary>The header in force, lines as in a run file.</summary>
    public string[] Header { get; init; } = [];

    /// <summary>Headers that were in force before, each as one text.</summary>
    public string[] Earlier { get; init; } = [];

    /// <summary>Names of the unknown columns.</summary>
    public string[] Columns { get; init; } = [];

    /// <summary>Rows, void ones included.</summary>
    public int Rows { get; init; }

    /// <summary>Rows that are void.</summary>
    public int Voided { get; init; }

    /// <summary>Rows that hold a reading and count.</summary>
    public int Readings { get; init; }

    /// <summary>When the last thing happened to it or was logged, ISO 8601.</summary>
    public string Last { get; init; } = "";
}
