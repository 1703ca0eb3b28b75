namespace Viscolog.Store;

/// <summary>What stands in the place of the query copy.</summary>
internal enum CopyState
{
    /// <summary>Nothing.</summary>
    Missing,

    /// <summary>A query copy of this program's version.</summary>
    Ours,

    /// <summary>A query copy of an older version.</summary>
    Older,

    /// <summary>A query copy of a newer version.</summary>
    Newer,

    /// <summary>A query copy that is not whole.</summary>
    Damaged,

    /// <summary>Something else, which is not ours to change.</summary>
    Foreign,
}
