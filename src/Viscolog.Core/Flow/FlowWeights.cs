namespace Viscolog.Core.Flow;

/// <summary>How much each point counts in a fit. It changes the answer, so it is always stated with it.</summary>
public enum FlowWeights
{
    /// <summary>By 1/stress: every point may be off by the same part of itself.</summary>
    Relative,

    /// <summary>All alike in Pa: high stresses decide.</summary>
    None,
}
