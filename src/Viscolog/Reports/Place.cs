using Viscolog.Core.Advising;
using Viscolog.Wording;

namespace Viscolog.Reports;

/// <summary>Where a body lies to its band, in words.</summary>
/// <param name="Sign">One or two words.</param>
/// <param name="Words">The chances.</param>
/// <param name="Weight">How it is to look.</param>
internal sealed record Place(string Sign, string Words, ResultWeight Weight)
{
    public static Place Of(BodyChances chances)
    {
        var words = $"Chance of being in band {Shown.Chance(chances.InBand)}, short {Shown.Chance(chances.Under)}, over {Shown.Chance(chances.Over)}.";
        var sure = IncrementPolicy.StopChance;
        return chances switch
        {
            _ when chances.InBand.Fraction >= sure => new("In band", words, ResultWeight.Good),
            _ when chances.Over.Fraction >= sure => new("Over the band", words, ResultWeight.Bad),
            _ when chances.Under.Fraction >= sure => new("Short of the band", words, ResultWeight.Bad),
            _ => new("Not decided", words, ResultWeight.Plain),
        };
    }
}
