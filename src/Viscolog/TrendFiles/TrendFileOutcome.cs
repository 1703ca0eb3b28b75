using Viscolog.RunFiles;

namespace Viscolog.TrendFiles;

/// <summary>What came of reading a trend file. The set of cases is closed.</summary>
internal abstract record TrendFileOutcome
{
    private TrendFileOutcome()
    {
    }

    /// <summary>It was read whole.</summary>
    internal sealed record Read(TrendFile File) : TrendFileOutcome;

    /// <summary>It was refused whole.</summary>
    internal sealed record Refused(Refusal Refusal) : TrendFileOutcome;
}
