using Viscolog.Core.Limits;

namespace Viscolog.Wording;

/// <summary>Cautions in words.</summary>
internal static class CautionWords
{
    public static string Of(IEnumerable<Caution> cautions) => string.Join(' ', cautions.Select(Of));

    public static string Of(Caution caution) => caution switch
    {
        Caution.Alkali => Say("Alkali and amines that raise the pH burn skin and eyes: goggles and gloves, add them slowly and diluted."),
        Caution.SkinAndDust => Say("Thickeners and binders contain preservatives that can make skin allergic, and dry colour and filler "
            + "must not be breathed in: gloves, no dust."),
        Caution.DataSheetDecides => Say("The safety data sheet and local rules decide."),
        _ => throw new ArgumentOutOfRangeException(nameof(caution), caution, "not a case of the closed set"),
    };

    /// <summary>The same in a few words, for where there is little room.</summary>
    public static string Brief(IEnumerable<Caution> cautions) => string.Join(' ', cautions.Select(c => c switch
    {
        Caution.Alkali => Say("Alkali burns skin and eyes: goggles and gloves."),
        Caution.SkinAndDust => Say("Preservatives can make skin allergic: gloves. Don't breathe in dust."),
        _ => Of(c),
    }));
}
