using Viscolog.Core.Advising;

namespace Viscolog.Cli.Json;

/// <summary>What is still to come of a thickener.</summary>
internal sealed record PlannedAnswer(string Thickener, double AboutPct, int Additions)
{
    /// <summary>Of a thickener for which something is planned.</summary>
    public static PlannedAnswer Of(AdvisedThickener thickener)
        => new(thickener.Name, Math.Round(thickener.Planned!.About.Percent, 2), thickener.Planned.Additions);
}
