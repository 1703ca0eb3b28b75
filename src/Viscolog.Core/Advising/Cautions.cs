using System.Collections.Immutable;
using Viscolog.Core.Pots;

namespace Viscolog.Core.Advising;

/// <summary>The usual cautions at the bench; common practice, the safety data sheet decides.</summary>
internal static class Cautions
{
    /// <summary>What ends every list of them.</summary>
    public const string Last = "The safety data sheet and local rules decide.";

    public static ImmutableArray<string> For(params IEnumerable<Thickener> thickeners)
    {
        var general = "Thickeners and binders contain preservatives that can make skin allergic, and dry colour and filler must not be "
            + "breathed in: gloves, no dust.";
        return thickeners.Any(t => t.Chemistry == ThickenerChemistry.AlkaliSwellable)
            ? ["Alkali and amines that raise the pH burn skin and eyes: goggles and gloves, add them slowly and diluted.", general, Last]
            : [general, Last];
    }
}
