using Viscolog.RunFiles;

namespace Viscolog.OilFiles;

/// <summary>What came of reading an oils file. The set of cases is closed.</summary>
internal abstract record OilFileOutcome
{
    private OilFileOutcome()
    {
    }

    /// <summary>It was read whole.</summary>
    internal sealed record Read(OilFile File) : OilFileOutcome;

    /// <summary>It was refused whole.</summary>
    internal sealed record Refused(Refusal Refusal) : OilFileOutcome;
}
