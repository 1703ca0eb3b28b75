using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Batches;

/// <summary>What the maker of a batch must know of the run that it is made after.</summary>
internal static class BatchNotes
{
    public static IEnumerable<BatchNote> Of(Run run, Recipe recipe)
    {
        var counting = run.Entries.Where(e => e.Counts).ToArray();
        var taken = Mass.FromGrams(counting.OfType<Entry.TakenOut>().Sum(t => t.Sample.Grams));
        var added = Mass.FromGrams(counting.OfType<Entry.LetDown>().Sum(t => t.Base.Grams));
        if (taken > Mass.None || added > Mass.None)
        {
            yield return new BatchNote.BaseChanged(taken, added);
        }

        if (recipe.WaterOnBase > Percentage.FromPercent(0))
        {
            yield return new BatchNote.WaterOnItsOwn(recipe.WaterOnBase);
        }

        foreach (var part in recipe.Parts.Where(p => p.Thickener.Density is null && recipe.Base.Density is not null))
        {
            yield return new BatchNote.DensityTaken(part.Thickener.Name);
        }

        if (recipe.Parts.Length > 1)
        {
            yield return new BatchNote.OrderOfRun();
        }

        yield return new BatchNote.ReadingsDecide();
    }
}
