namespace Viscolog.Core.Settling;

/// <summary>
/// Build-up after stirring: within a step y(t) = y∞ − (y∞ − y0)·exp(−(t/τ)^β) with y = ln η, t the standing time and y0 where the step
/// before stood when the thickener went in. τ and β are shared by the steps of a run (<see cref="Kinetics"/>).
/// </summary>
public static class BuildUp
{
    /// <summary>The least time in s that a person needs between two readings.</summary>
    public const double LeastWaitSeconds = 10;

    /// <summary>The longest wait in s that is ever asked for.</summary>
    public const double LongestWaitSeconds = 86_400;

    /// <summary>
    /// Share of the draws that have settled after the wait that is told: a slower pot shows it by then, and is waited for again.
    /// </summary>
    private const double Settle = 0.75;

    /// <summary>The wait after which three draws in four have less than a bound of their change still to come.</summary>
    /// <param name="changes">Change still to come at time 0, one for each draw, in ln units.</param>
    /// <param name="kinetics">The kinetics of the same draws.</param>
    /// <param name="bound">The bound in ln units, above 0.</param>
    /// <returns>In s, between the least and the longest wait; rounded up as <see cref="Rounded"/> does.</returns>
    public static double WaitUntilBelow(IReadOnlyList<double> changes, IReadOnlyList<Kinetics> kinetics, double bound)
    {
        double[] times = [.. changes.Select((change, i) => kinetics[i].Until(bound / Math.Abs(change))).Order()];
        return Rounded(times[(int)(Settle * (times.Length - 1))]);
    }

    /// <summary>
    /// A wait that a person keeps: up to 5 s, beyond two minutes to 30 s, beyond twenty to 5 min, beyond four hours to an hour.
    /// </summary>
    /// <param name="seconds">In s.</param>
    public static double Rounded(double seconds)
    {
        var grain = seconds switch { > 14_400 => 3600, > 1200 => 300, > 120 => 30, _ => 5 };
        return Math.Clamp(Math.Ceiling(seconds / grain) * grain, LeastWaitSeconds, LongestWaitSeconds);
    }

    /// <summary>The mean over the draws of the size of the change still to come after standing for a time, in ln units.</summary>
    /// <param name="changes">Change still to come at time 0, in ln units.</param>
    /// <param name="kinetics">The kinetics of the same draws.</param>
    /// <param name="seconds">Standing time in s.</param>
    public static double ExpectedRemaining(ReadOnlySpan<double> changes, ReadOnlySpan<Kinetics> kinetics, double seconds)
    {
        var (sum, log) = (0.0, Math.Log(seconds));
        for (var i = 0; i < changes.Length; i++)
        {
            sum += Math.Abs(changes[i]) * kinetics[i].RemainingAt(log);
        }

        return sum / changes.Length;
    }
}
