using Viscolog.Core.Limits;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Languages;
using Viscolog.Wording;

namespace Viscolog.Tests.Wording;

/// <summary>Every limit and every caution has its words, in both languages.</summary>
public sealed class LimitWordsTests
{
    public static TheoryData<LimitReason, string, string> Reasons => new()
    {
        { new LimitReason.UsualRange(), "the usual range ends at 2.5 %", "üblicher Bereich bis 2,5 %" },
        { new LimitReason.TooStiff(), "from 2.5 % on the pot is expected to be too stiff to stir",
            "ab 2,5 % ist der Ansatz voraussichtlich zu steif zum Rühren" },
        { new LimitReason.Flattens(), "the curve flattens from 2.5 %: more adds little body, only water sensitivity and cost",
            "die Kurve flacht ab 2,5 % ab: mehr bringt kaum noch Körper, nur Wasserempfindlichkeit und Kosten" },
        { new LimitReason.Flattens(IsBrief: true), "the curve flattens from 2.5 %", "die Kurve flacht ab 2,5 % ab" },
        { new LimitReason.MayPeak(), "the body may peak near 2.5 % and fall beyond it",
            "der Körper ist womöglich nahe 2,5 % am größten und fällt darüber" },
        { new LimitReason.Falls(), "the body falls beyond 2.5 %", "der Körper fällt über 2,5 % hinaus" },
        { new LimitReason.Seen(ObservedFault.Lumps), "lumps that stirring did not remove were seen at 2.5 %",
            "bei 2,5 % waren Klumpen zu sehen, die sich nicht wegrühren ließen" },
        { new LimitReason.Seen(ObservedFault.Weeping), "weeping was seen at 2.5 %", "bei 2,5 % trat Flüssigkeit aus" },
        { new LimitReason.Seen(ObservedFault.Strings), "unwanted strings were seen at 2.5 %",
            "bei 2,5 % waren unerwünschte Fäden zu sehen" },
        { new LimitReason.Seen(ObservedFault.NoLevelling), "it was seen not to level at 2.5 %", "bei 2,5 % verlief der Ansatz nicht" },
    };

    [Theory]
    [MemberData(nameof(Reasons))]
    public void A_limit_has_its_words(LimitReason why, string english, string german)
    {
        var limit = new DoseLimit(Dose.FromPercent(2.5), why);
        Assert.Equal((english, german), (LimitWords.Of(limit), Tongue.In(Language.German, () => LimitWords.Of(limit))));
    }

    [Fact]
    public void Every_caution_has_its_words_and_the_data_sheet_comes_last()
    {
        var all = Cautions.For(new Thickener("T") { Chemistry = ThickenerChemistry.AlkaliSwellable });
        Assert.Equal(Enum.GetValues<Caution>(), all);
        Assert.EndsWith("The safety data sheet and local rules decide.", CautionWords.Of(all), StringComparison.Ordinal);
        Assert.StartsWith("Alkali burns skin and eyes", CautionWords.Brief(all), StringComparison.Ordinal);
        Assert.EndsWith(
            "Vorschriften entscheiden.", Tongue.In(Language.German, () => CautionWords.Brief(all)), StringComparison.Ordinal);
        Assert.DoesNotContain(Caution.Alkali, Cautions.For(new Thickener("T") { Chemistry = ThickenerChemistry.Clay }));
    }
}
