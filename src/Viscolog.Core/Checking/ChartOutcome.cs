namespace Viscolog.Core.Checking;

/// <summary>Whether values could be charted. The set of cases is closed.</summary>
public abstract record ChartOutcome
{
    private protected ChartOutcome()
    {
    }

    /// <summary>They could.</summary>
    /// <param name="Chart">The chart.</param>
    public sealed record Charted(ControlChart Chart) : ChartOutcome;

    /// <summary>They could not.</summary>
    /// <param name="Reason">Why, and what to do.</param>
    public sealed record Refused(string Reason) : ChartOutcome;
}
