namespace Viscolog.Cli.Json;

/// <summary>How a log is shared, as <c>viscolog.share/1</c>.</summary>
/// <param name="Joined">Whether it is.</param>
internal sealed record ShareAnswer(bool Joined) : Answer("viscolog.share/1")
{
    /// <summary>The shared database.</summary>
    public string? Address { get; init; }

    /// <summary>What this bench is called.</summary>
    public string? Bench { get; init; }

    /// <summary>Which of the log's lives this is.</summary>
    public int? Life { get; init; }

    /// <summary>Lines that were sent now.</summary>
    public long? Sent { get; init; }

    /// <summary>Lines of other benches that were fetched now.</summary>
    public long? Fetched { get; init; }

    /// <summary>Lines that this log had lost and took back now.</summary>
    public long? TakenBack { get; init; }

    /// <summary>When other benches were asked last, ISO 8601.</summary>
    public string? Asked { get; init; }

    /// <summary>The names of the other benches.</summary>
    public IReadOnlyList<string>? Benches { get; init; }

    /// <summary>Stands for all that this bench knows of itself and of the others.</summary>
    public string? State { get; init; }

    /// <summary>What is wrong with records of others.</summary>
    public IReadOnlyList<string>? LeftOut { get; init; }
}

/// <summary>Runs of other benches, as <c>viscolog.shared-runs/1</c>.</summary>
/// <param name="Runs">The runs.</param>
internal sealed record SharedRunsAnswer(IReadOnlyList<SharedRunsAnswer.SharedRun> Runs) : Answer("viscolog.shared-runs/1")
{
    /// <summary>A run.</summary>
    /// <param name="Id">Its UUID.</param>
    /// <param name="Bench">The bench that has it.</param>
    /// <param name="Name">What it says of itself.</param>
    /// <param name="Entries">Its rows.</param>
    /// <param name="Handed">Whether it was handed to this bench, or to another one.</param>
    internal sealed record SharedRun(Guid Id, string Bench, string Name, int Entries, string? Handed);
}
