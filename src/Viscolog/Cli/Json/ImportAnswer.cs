namespace Viscolog.Cli.Json;

/// <summary>What an import did, as <c>viscolog.import/1</c>.</summary>
internal sealed record ImportAnswer
{
    public string Schema { get; } = "viscolog.import/1";

    /// <summary>Files that are in the log now, whole.</summary>
    public int Files { get; init; }

    /// <summary>Runs that are new to the log.</summary>
    public int Runs { get; init; }

    /// <summary>Entries that are new to the log.</summary>
    public int Entries { get; init; }

    /// <summary>Entries of the log that were made void.</summary>
    public int Voided { get; init; }

    /// <summary>Materials that are new to the log or changed.</summary>
    public int Materials { get; init; }

    /// <summary>Readings of certified oils that are new to the log.</summary>
    public int Oils { get; init; }

    /// <summary>Entries, materials and oil readings that the log had already.</summary>
    public int Already { get; init; }

    /// <summary>Both together.</summary>
    public ImportAnswer With(ImportAnswer other) => new()
    {
        Files = Files + other.Files,
        Runs = Runs + other.Runs,
        Entries = Entries + other.Entries,
        Voided = Voided + other.Voided,
        Materials = Materials + other.Materials,
        Oils = Oils + other.Oils,
        Already = Already + other.Already,
    };
}
