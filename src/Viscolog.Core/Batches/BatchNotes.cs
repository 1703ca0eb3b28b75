using System.Globalization;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Batches;

/// <summary>What the maker of a batch must know of the run that it is made after.</summary>
internal static class BatchNotes
{
    public static IEnumerable<string> Of(Run run, Recipe recipe)
    {
        var counting = run.Entries.Where(e => e.Counts).ToArray();
        var taken = counting.OfType<Entry.TakenOut>().Sum(t => t.Sample.Grams);
        var added = counting.OfType<Entry.LetDown>().Sum(t => t.Base.Grams);
        string?[] changes =
        [
            taken > 0 ? FormattableString.Invariant($"{taken:0.##} g of samples were taken") : null,
            added > 0 ? FormattableString.Invariant($"{added:0.##} g of base went in to let it down") : null,
        ];
        if (changes.OfType<string>().ToArray() is { Length: > 0 } changed)
        {
            yield return $"in the run {string.Join(" and ", changed)}: what carries over is the dose, not the grams that were poured";
        }

        if (recipe.WaterOnBase > Percentage.FromPercent(0))
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"water was poured into the run on its own "
                + $"({recipe.WaterOnBase.Percent:0.00} g for 100 g of base now): it goes in with the base here");
        }

        foreach (var part in recipe.Parts.Where(p => p.Thickener.Density is null && recipe.Base.Density is not null))
        {
            yield return $"no density is stated for '{part.Thickener.Name}': it counts with 1.0 g/mL in the batch's volume";
        }

        if (recipe.Parts.Length > 1)
        {
            yield return "the thickeners go in by the same part of each, in the order of the run; the order itself can matter, so keep it";
        }

        yield return "a larger vessel mixes more slowly than a cup, other lots thicken differently, and colour or filler shifts the "
            + "curve: the readings decide, not the last gram of the plan";
    }
}
