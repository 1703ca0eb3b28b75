namespace Viscolog.Core.Settling;

/// <summary>
/// When a reading or a pot counts as settled: one rule for every place that asks. All are rules of this project, made from the prior of the
/// time constant; none has a source.
/// </summary>
public static class Settled
{
    /// <summary>
    /// Without a posterior: a reading has settled from so long a standing time on, in s; six usual time constants leave 1/400 of the
    /// change.
    /// </summary>
    public const double Seconds = 6 * BuildUp.PriorMedianSeconds;

    /// <summary>
    /// With a known time constant: a reading has settled from where on less than this part of the step's change is still to come.
    /// </summary>
    public const double Part = 0.02;

    /// <summary>
    /// With a posterior: the change still to come, in ln units, below which a reading has settled: half the repeatability.
    /// </summary>
    /// <param name="repeatability">Repeatability on the ln scale.</param>
    public static double Bound(double repeatability) => repeatability / 2;

    /// <summary>
    /// Standing time in s that a reading counts with: the base before any addition has nothing to build up, and an unstated wait is taken
    /// as long enough.
    /// </summary>
    /// <param name="isBase">Whether it was read before any addition.</param>
    /// <param name="wait">The standing time noted; null for none.</param>
    /// <returns>Infinity where the reading counts as settled.</returns>
    public static double WaitSeconds(bool isBase, TimeSpan? wait)
        => isBase || wait is null ? double.PositiveInfinity : wait.Value.TotalSeconds;

    /// <summary>
    /// Whether two readings of one step settle it, whatever the posterior expects: time lay between them, and they agree.
    /// </summary>
    /// <param name="before">Standing time in s and ln body of the earlier.</param>
    /// <param name="last">Of the later.</param>
    /// <param name="repeatability">Repeatability on the ln scale.</param>
    public static bool TwoAgree((double Wait, double Ln) before, (double Wait, double Ln) last, double repeatability)
        => last.Wait - before.Wait >= BuildUp.LeastWaitSeconds && Math.Abs(last.Ln - before.Ln) <= repeatability;

    /// <summary>Expected size of the change still to come after standing for a time, and the further wait until it has settled.</summary>
    /// <param name="changes">Change at the start of the step, one for each draw, in ln units.</param>
    /// <param name="timeConstants">τ in s of the same draws.</param>
    /// <param name="stood">Standing time in s.</param>
    /// <param name="repeatability">Repeatability on the ln scale.</param>
    public static (double Remaining, double MoreWaitSeconds) After(
        double[] changes, double[] timeConstants, double stood, double repeatability)
    {
        double[] left = [.. changes.Select((change, i) => change * BuildUp.Remaining(stood, timeConstants[i]))];
        return (BuildUp.ExpectedRemaining(left, timeConstants, 0), BuildUp.WaitUntilBelow(left, timeConstants, Bound(repeatability)));
    }
}
