namespace Viscolog.Benchmarks;

/// <summary>How one pot was played.</summary>
internal sealed record Played(int Doses, int Reads, int Waits)
{
    /// <summary>How often advice was asked for.</summary>
    public int Calls { get; init; }

    /// <summary>For each dose in order, whether the true body lay in the 90 % interval foretold.</summary>
    public IReadOnlyList<bool> Held { get; init; } = [];
}
