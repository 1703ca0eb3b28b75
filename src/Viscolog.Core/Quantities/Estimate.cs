namespace Viscolog.Core.Quantities;

/// <summary>A viscosity that is not known exactly: its median and an interval that holds it with a stated chance.</summary>
/// <param name="Median">As likely to be above as below.</param>
/// <param name="Low">The interval's low end.</param>
/// <param name="High">The interval's high end.</param>
/// <param name="Level">The chance that the interval holds the value.</param>
public sealed record Estimate(Viscosity Median, Viscosity Low, Viscosity High, Percentage Level)
{
    /// <summary>
    /// Level of the intervals that advice, pictures, reports and flow curves state: nine in ten (a rule of this project).
    /// </summary>
    public static Percentage UsualLevel { get; } = Percentage.FromPercent(90);
}
