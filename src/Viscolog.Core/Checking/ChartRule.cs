namespace Viscolog.Core.Checking;

/// <summary>The four rules by which a chart gives a signal (Western Electric, Statistical Quality Control Handbook, 1956; from memory).</summary>
public enum ChartRule
{
    /// <summary>One point beyond the limits.</summary>
    BeyondLimits,

    /// <summary>Two of three points in a row beyond two thirds of the way to the same limit.</summary>
    TwoOfThree,

    /// <summary>Four of five points in a row beyond one third of the way to the same limit.</summary>
    FourOfFive,

    /// <summary>Eight points in a row on one side of the mean.</summary>
    EightOnOneSide,
}
