using Viscolog.Core.Pots;

namespace Viscolog.Core.Settling;

/// <summary>
/// When a reading or a pot counts as settled: one rule for every place that asks. All are rules of this project, made from the prior of the
/// time constant; none has a source.
/// </summary>
public static class Settled
{
    /// <summary>The median of τ in s where no thickener is named.</summary>
    private const double LeastMedian = 20;

    /// <summary>
    /// Without a posterior: a reading has settled from so long a standing time on, in s; six usual time constants leave 1/400 of the
    /// change.
    /// </summary>
    /// <param name="run">The run; the slowest of its thickeners counts.</param>
    public static double SecondsIn(Run run)
        => 6 * run.Thickeners.Select(t => KineticsPrior.Of(t.Chemistry).MedianSeconds).DefaultIfEmpty(LeastMedian).Max();

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

    /// <summary>Whether two single readings differ by more than they scatter: by two standard errors of a difference.</summary>
    /// <param name="change">By how much the later lies above, or the earlier, in ln units.</param>
    /// <param name="repeatability">Repeatability on the ln scale.</param>
    public static bool IsBeyondScatter(double change, double repeatability) => change > 2 * Math.Sqrt(2) * repeatability;

    /// <summary>Whether the last of a step's readings and one before it settle the step, as <see cref="TwoAgree"/> says.</summary>
    /// <param name="readings">Standing time in s and ln body of each, in order of time.</param>
    /// <param name="repeatability">Repeatability on the ln scale.</param>
    public static bool Agree(IReadOnlyList<(double Wait, double Ln)> readings, double repeatability)
        => readings.SkipLast(1).Any(r => TwoAgree(r, readings[^1], repeatability));

    /// <summary>
    /// Whether two readings of one step settle it, whatever the posterior expects: they lie as far apart as the pot had stood before the
    /// first, and they agree.
    /// </summary>
    /// <param name="before">Standing time in s and ln body of the earlier.</param>
    /// <param name="last">Of the later.</param>
    /// <param name="repeatability">Repeatability on the ln scale.</param>
    public static bool TwoAgree((double Wait, double Ln) before, (double Wait, double Ln) last, double repeatability)
        => last.Wait - before.Wait >= Math.Max(BuildUp.LeastWaitSeconds, before.Wait) && Math.Abs(last.Ln - before.Ln) <= repeatability;

    /// <summary>Expected size of the change still to come after standing for a time, whether the pot has stood as long as it is
    /// told to, and the further wait.</summary>
    /// <param name="changes">Change at the start of the step, one for each draw, in ln units.</param>
    /// <param name="kinetics">The kinetics of the same draws.</param>
    /// <param name="stood">Standing time in s.</param>
    /// <param name="repeatability">Repeatability on the ln scale.</param>
    /// <returns>The wait at least doubles the time stood, so that two readings that agree can settle the step, and at most multiplies it by
    /// five: the next reading tells how long to wait on.</returns>
    public static (double Remaining, bool IsOver, double MoreWaitSeconds) After(
        double[] changes, Kinetics[] kinetics, double stood, double repeatability)
    {
        var more = BuildUp.WaitUntilBelow(changes, kinetics, Bound(repeatability)) - stood;
        return (BuildUp.ExpectedRemaining(changes, kinetics, stood), more <= 0, BuildUp.Rounded(Math.Clamp(more, stood, (4 * stood) + 60)));
    }
}
