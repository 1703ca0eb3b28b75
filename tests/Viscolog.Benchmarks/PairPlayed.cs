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

    /// <summary>Over at the end, or at any time before a let-down brought it back.</summary>
    public bool Over => BodyOver || StringOver || EverOver;

    public bool EverOver { get; init; }

    /// <summary>How often base went in; each counts as an addition too.</summary>
    public int LetDowns { get; init; }

    public int Calls { get; init; }

    /// <summary>For each addition in order, whether the true body and string lay in the 90 % intervals foretold.</summary>
    public IReadOnlyList<(bool Body, bool String)> Held { get; init; } = [];
}
