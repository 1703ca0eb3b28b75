namespace Viscolog.Cli.Json;

/// <summary>What an import did, as <c>viscolog.import/1</c>.</summary>
internal sealed record ImportAnswer() : Answer("viscolog.import/1")
{
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

    /// <summary>Why files were not taken; null where all were.</summary>
    public IReadOnlyList<FileError>? Errors { get; init; }

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

/// <summary>Files that an export wrote, as <c>viscolog.export/1</c>.</summary>
internal sealed record ExportAnswer(IReadOnlyList<string> Written) : Answer("viscolog.export/1");

/// <summary>A backup that was made, as <c>viscolog.backup/1</c>.</summary>
internal sealed record BackupAnswer(string Path, long Lines, int Deleted) : Answer("viscolog.backup/1");

/// <summary>A backup that was put back, as <c>viscolog.restore/1</c>.</summary>
internal sealed record RestoreAnswer(long Lines, string? Aside) : Answer("viscolog.restore/1");

/// <summary>What a full check found, as <c>viscolog.verify/1</c>.</summary>
internal sealed record VerifyAnswer(long Lines, int Runs, long Entries, IReadOnlyList<string> Mended) : Answer("viscolog.verify/1")
{
    /// <summary>What of the journal can't be applied, a line each; null where all of it can.</summary>
    public IReadOnlyList<string>? LeftOut { get; init; }
}

/// <summary>What was salvaged from a damaged log, as <c>viscolog.salvage/1</c>.</summary>
internal sealed record SalvageAnswer(string Path, long Lines, long Entries, IReadOnlyList<string> Losses) : Answer("viscolog.salvage/1");
