using Viscolog.RunFiles;

namespace Viscolog.MaterialFiles;

/// <summary>What came of reading a materials file. The set of cases is closed.</summary>
internal abstract record MaterialFileOutcome
{
    private MaterialFileOutcome()
    {
    }

    /// <summary>It was read whole.</summary>
    internal sealed record Read(MaterialFile File) : MaterialFileOutcome;

    /// <summary>It was refused whole.</summary>
    internal sealed record Refused(Refusal Refusal) : MaterialFileOutcome;
}
