using Viscolog.Core.Quantities;

namespace Viscolog.Cli.Json;

/// <summary>An estimate of a length in mm.</summary>
internal sealed record LengthAnswer(double Median, double Low, double High, double LevelPct)
{
    public static LengthAnswer Of(LengthEstimate estimate) => new(
        Rounded.Four(estimate.Median.Millimeters), Rounded.Four(estimate.Low.Millimeters), Rounded.Four(estimate.High.Millimeters), estimate.Level.Percent);
}
