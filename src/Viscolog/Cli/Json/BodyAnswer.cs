using Viscolog.Core.Quantities;

namespace Viscolog.Cli.Json;

/// <summary>An estimate of a body in mPa·s.</summary>
internal sealed record BodyAnswer(double Median, double Low, double High, double LevelPct)
{
    public static BodyAnswer Of(Estimate estimate) => new(
        Rounded.Four(estimate.Median.MilliPascalSeconds),
        Rounded.Four(estimate.Low.MilliPascalSeconds),
        Rounded.Four(estimate.High.MilliPascalSeconds),
        estimate.Level.Percent);
}
