using Viscolog.Core.Advising;

namespace Viscolog.Cli.Json;

/// <summary>What an addition asked about would bring.</summary>
internal sealed record WhatIfAnswer(
    double AddG, double AddPct, double DoseAfterPct, BodyAnswer ExpectedMpas, double ChanceInBandPct, double ChanceOverPct, string ChanceOverWords, IReadOnlyList<string> Notes)
{
    public static WhatIfAnswer Of(WhatIf asked) => new(
        asked.Poured.Grams,
        Rounded.Four(asked.Increment.Percent),
        Rounded.Four(asked.After.Percent),
        BodyAnswer.Of(asked.Expected),
        Math.Round(asked.ChanceInBand.Percent, 2),
        Math.Round(asked.ChanceOver.Percent, 2),
        Explanation.OneIn(asked.ChanceOver),
        asked.Notes);
}
