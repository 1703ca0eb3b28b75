namespace Viscolog.Core.Flow;

/// <summary>Why a law has no fit. The set of cases is closed.</summary>
public abstract record FlowTrouble
{
    private protected FlowTrouble()
    {
    }

    /// <summary>There are no more points than parameters.</summary>
    /// <param name="Points">Points.</param>
    /// <param name="Parameters">Parameters of the law.</param>
    public sealed record TooFewPoints(int Points, int Parameters) : FlowTrouble;

    /// <summary>The data do not determine the law's parameters.</summary>
    public sealed record Undetermined : FlowTrouble;

    /// <summary>The data do not show the law's plateaus.</summary>
    public sealed record NoPlateaus : FlowTrouble;
}
