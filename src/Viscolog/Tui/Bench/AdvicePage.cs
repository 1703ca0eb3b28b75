using Viscolog.Core.Advising;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Tui.Bench;

/// <summary>All that the advice says, where the bench screen has room for its beginning only.</summary>
internal static class AdvicePage
{
    public static IEnumerable<string> Lines(BenchAdvice said, int width)
        => Paragraphs(said).SelectMany(p => p.Length == 0 ? [""] : Paragraph.Of(p, width));

    /// <summary>Why the advice is what it is, and what else is to be known, without a break.</summary>
    public static string Why(Advice advice)
        => string.Join(' ', [ReasonWords.Of(advice), .. Plan(advice), .. advice.Warnings.Select(ReasonWords.Of)]);

    private static IEnumerable<string> Paragraphs(BenchAdvice said)
    {
        if (said.Advice is not { } advice)
        {
            return [said.Refused ?? ""];
        }

        return
        [
            .. AdviceWords.Headline(advice),
            "",
            Say($"Target: {AdviceWords.Bands(advice)}."),
            .. advice.Quantities.SelectMany(Expected),
            .. advice.IsAllRead ? new[] { Say($"In band: {AdviceWords.InBand(advice)}. Over: {AdviceWords.Over(advice)}.") } : [],
            "",
            ReasonWords.Of(advice),
            .. Plan(advice),
            .. advice.Warnings.Select(ReasonWords.Of),
            "",
            .. advice.Thickeners.Select(
                t => Say($"{t.Name}: {Shown.Dose(t.DoseNow)} in the pot, limit {Shown.Dose(t.Limit.Dose)}: {LimitWords.Of(t.Limit)}")),
            "",
            .. advice.Cautions.Select(CautionWords.Of),
        ];
    }

    private static IEnumerable<string> Plan(Advice advice) => AdviceWords.Plan(advice) is { } plan ? [Say($"Plan: {plan}.")] : [];

    private static IEnumerable<string> Expected(AdvisedQuantity quantity)
    {
        if (AdviceWords.Now(quantity) is { } now)
        {
            yield return Say($"{Capital(AdviceWords.Name(quantity))} now: {now}.");
        }

        if (AdviceWords.Expected(quantity) is { } expected)
        {
            yield return Say($"{Capital(AdviceWords.Name(quantity))} expected then: {expected}.");
        }
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
