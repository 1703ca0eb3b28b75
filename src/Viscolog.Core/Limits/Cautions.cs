using System.Collections.Immutable;
using Viscolog.Core.Pots;

namespace Viscolog.Core.Limits;

/// <summary>Which cautions go with what is in a pot.</summary>
public static class Cautions
{
    /// <summary>The cautions in the order they are told.</summary>
    /// <param name="thickeners">What is in the pot.</param>
    public static ImmutableArray<Caution> For(params IEnumerable<Thickener> thickeners)
        => thickeners.Any(t => t.Chemistry == ThickenerChemistry.AlkaliSwellable)
            ? [Caution.Alkali, Caution.SkinAndDust, Caution.DataSheetDecides]
            : [Caution.SkinAndDust, Caution.DataSheetDecides];
}

/// <summary>A caution at the bench: common practice; the safety data sheet decides.</summary>
public enum Caution
{
    /// <summary>Alkali and amines burn.</summary>
    Alkali,

    /// <summary>Preservatives make skin allergic, and dust must not be breathed in.</summary>
    SkinAndDust,

    /// <summary>The safety data sheet and local rules decide: what ends every list of them.</summary>
    DataSheetDecides,
}
