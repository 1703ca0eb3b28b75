using Viscolog.RunFiles;

namespace Viscolog.FlowFiles;

/// <summary>What came of reading a flow file. The set of cases is closed.</summary>
internal abstract record FlowFileOutcome
{
    private FlowFileOutcome()
    {
    }

    /// <summary>It was read whole.</summary>
    internal sealed record Read(FlowFile File) : FlowFileOutcome;

    /// <summary>It was refused whole.</summary>
    internal sealed record Refused(Refusal Refusal) : FlowFileOutcome;
}
