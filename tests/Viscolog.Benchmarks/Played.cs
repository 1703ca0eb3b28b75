namespace Viscolog.Benchmarks;

/// <summary>How one pot was played.</summary>
internal sealed record Played(int Doses, int Reads, int Waits)
{
    /// <summary>How often advice was asked for.</summary>
    public int Calls { get; init; }

    /// <summary>For each dose in order, whether the true body lay in the 90 % interval foretold.</summary>
    public IReadOnlyList<bool> Held { get; init; } = [];

    /// <summary>For each advice the level of the interval of the body now, and whether the true settled body lay in it.</summary>
    public IReadOnlyList<(double Stated, bool Came)> Now { get; init; } = [];

    /// <summary>For each addition the chance stated of going over, and whether it did.</summary>
    public IReadOnlyList<(double Stated, bool Came)> Additions { get; init; } = [];

    /// <summary>Where it ended with "stop": the chance stated of being in band, and whether it was.</summary>
    public IReadOnlyList<(double Stated, bool Came)> Stops { get; init; } = [];

    /// <summary>Where it was given up: the same.</summary>
    public IReadOnlyList<(double Stated, bool Came)> GivenUp { get; init; } = [];
}
