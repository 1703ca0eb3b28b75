namespace Viscolog.Benchmarks;

/// <summary>How one pot of two thickeners was played and what came of it.</summary>
internal sealed record PairPlayed(int Additions, int BodyReads, int StringReads)
{
    public string Family { get; init; } = "";

    public string End { get; init; } = "";

    public bool BodyIn { get; init; }

    public bool StringIn { get; init; }

    public bool BodyOver { get; init; }

    public bool StringOver { get; init; }

    public bool BothIn => BodyIn && StringIn;

    public bool Over => BodyOver || StringOver;

    public int Calls { get; init; }

    /// <summary>For each addition in order, whether the true body and string lay in the 90 % intervals foretold.</summary>
    public IReadOnlyList<(bool Body, bool String)> Held { get; init; } = [];
}
