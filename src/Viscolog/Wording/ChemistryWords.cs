using Viscolog.Core.Pots;

namespace Viscolog.Wording;

/// <summary>What makes a thickener thicken, in words.</summary>
internal static class ChemistryWords
{
    /// <summary>What the chemistry is.</summary>
    public static string Of(ThickenerChemistry chemistry) => chemistry switch
    {
        ThickenerChemistry.AlkaliSwellable => Say("swells when its acid groups are neutralised; needs the right pH"),
        ThickenerChemistry.Associative => Say("links binder particles; brings string and pull"),
        ThickenerChemistry.Cellulosic => Say("a cellulose ether"),
        ThickenerChemistry.Clay => Say("a swelling clay"),
        ThickenerChemistry.Other => Say("none of the others, or not stated"),
        _ => throw new ArgumentOutOfRangeException(nameof(chemistry)),
    };
}
