namespace Viscolog.Core.Settling;

/// <summary>
/// Build-up after stirring: within a step y(t) = y∞ − (y∞ − y0)·exp(−t/τ) with y = ln η, t the standing time and y0 where the step before
/// stood when the thickener went in. First-order build-up; τ is shared by the steps of a run.
/// </summary>
public static class BuildUp
{
    /// <summary>Median of the prior of τ in s (common practice, no source: some seconds more of thickening after the stirring).</summary>
    public const double PriorMedianSeconds = 20;

    /// <summary>Standard deviation of the prior of ln τ (common practice, no source).</summary>
    public const double PriorLogSd = 0.8;

    /// <summary>The least time in s that a person needs between two readings.</summary>
    public const double LeastWaitSeconds = 10;

    /// <summary>The longest wait in s that is ever asked for.</summary>
    public const double LongestWaitSeconds = 900;

    /// <summary>The part of a step's change that is still to come after standing for a time.</summary>
    /// <param name="seconds">Standing time in s, 0 or more; infinity for settled.</param>
    /// <param name="timeConstant">τ in s, above 0.</param>
    /// <returns>From 1 (nothing has happened) down to 0 (settled).</returns>
    public static double Remaining(double seconds, double timeConstant) => Math.Exp(-seconds / timeConstant);

    /// <summary>The shortest wait after which the expected remaining change is below a bound.</summary>
    /// <param name="changes">Change still to come at time 0, one for each draw, in ln units.</param>
    /// <param name="timeConstants">τ in s of the same draws.</param>
    /// <param name="bound">The bound in ln units, above 0.</param>
    /// <returns>In s, between the least and the longest wait; rounded up to 5 s, to 30 s beyond two minutes.</returns>
    public static double WaitUntilBelow(ReadOnlySpan<double> changes, ReadOnlySpan<double> timeConstants, double bound)
    {
        double low = 0, high = LongestWaitSeconds;
        if (ExpectedRemaining(changes, timeConstants, high) > bound)
        {
            return LongestWaitSeconds;
        }

        // Halving to half a second and no finer: its high end leaves a small margin, which the waits of every stored answer hold.
        while (high - low > 0.5)
        {
            var middle = (low + high) / 2;
            (low, high) = ExpectedRemaining(changes, timeConstants, middle) > bound ? (middle, high) : (low, middle);
        }

        var grain = high > 120 ? 30 : 5;
        return Math.Clamp(Math.Ceiling(high / grain) * grain, LeastWaitSeconds, LongestWaitSeconds);
    }

    /// <summary>The mean over the draws of the size of the change still to come after standing for a time, in ln units.</summary>
    /// <param name="changes">Change still to come at time 0, in ln units.</param>
    /// <param name="timeConstants">τ in s of the same draws.</param>
    /// <param name="seconds">Standing time in s.</param>
    public static double ExpectedRemaining(ReadOnlySpan<double> changes, ReadOnlySpan<double> timeConstants, double seconds)
    {
        var sum = 0.0;
        for (var i = 0; i < changes.Length; i++)
        {
            sum += Math.Abs(changes[i]) * Remaining(seconds, timeConstants[i]);
        }

        return sum / changes.Length;
    }
}
