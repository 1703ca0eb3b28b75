namespace Viscolog.Core.Checking;

/// <summary>A rule that a chart breaks.</summary>
/// <param name="Place">The place of the point that completes the pattern, from 0.</param>
/// <param name="Batch">Its batch.</param>
/// <param name="Rule">The rule.</param>
/// <param name="IsHigh">Whether the pattern lies above the mean.</param>
public sealed record ChartSignal(int Place, string Batch, ChartRule Rule, bool IsHigh)
{
    /// <summary>The rule in words.</summary>
    public string Words => Rule switch
    {
        ChartRule.BeyondLimits => "one point beyond the limits",
        ChartRule.TwoOfThree => "two of three points beyond two thirds of the way to a limit",
        ChartRule.FourOfFive => "four of five points beyond one third of the way to a limit",
        _ => "eight points in a row on one side of the mean",
    };
}
