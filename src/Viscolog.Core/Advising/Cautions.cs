using System.Collections.Immutable;
using Viscolog.Core.Pots;

namespace Viscolog.Core.Advising;

/// <summary>The usual cautions at the bench; common practice, the safety data sheet decides.</summary>
public static class Cautions
{
    /// <summary>What ends every list of them.</summary>
    internal const string Last = "The safety data sheet and local rules decide.";

    /// <summary>The same in a few words, for where there is little room: common practice.</summary>
    /// <param name="thickeners">What is in the pot.</param>
    public static ImmutableArray<string> Brief(params IEnumerable<Thickener> thickeners)
    {
        const string general = "Preservatives can make skin allergic: gloves. Don't breathe in dust.";
        return thickeners.Any(t => t.Chemistry == ThickenerChemistry.AlkaliSwellable)
            ? ["Alkali burns skin and eyes: goggles and gloves.", general, Last]
            : [general, Last];
    }

    internal static ImmutableArray<string> For(params IEnumerable<Thickener> thickeners)
    {
        var general = "Thickeners and binders contain preservatives that can make skin allergic, and dry colour and filler must not be "
            + "breathed in: gloves, no dust.";
        return thickeners.Any(t => t.Chemistry == ThickenerChemistry.AlkaliSwellable)
            ? ["Alkali and amines that raise the pH burn skin and eyes: goggles and gloves, add them slowly and diluted.", general, Last]
            : [general, Last];
    }
}
