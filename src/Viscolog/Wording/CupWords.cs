using Viscolog.Core.Measuring;

namespace Viscolog.Wording;

/// <summary>Cups by the names that a person knows them by.</summary>
internal static class CupWords
{
    /// <summary>The cup in a sentence.</summary>
    public static string Of(CupEquation cup) => cup.Series switch
    {
        CupSeries.Iso2431 => Say($"the ISO 2431 cup of {cup.Number} mm"),
        CupSeries.D1200 => Say($"the ASTM D1200 cup no. {cup.Number}"),
        CupSeries.Dip44 => Say($"the 44 mL dip cup no. {cup.Number}"),
        CupSeries.Dip23 => Say($"the 23 mL dip cup no. {cup.Number}"),
        _ => throw new ArgumentOutOfRangeException(nameof(cup), cup.Series, "not a series of cups"),
    };
}
