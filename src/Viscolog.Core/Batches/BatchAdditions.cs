using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Batches;

/// <summary>Turns the stages of a batch into grams for a scale, rounded down so that no sum passes what was planned.</summary>
internal sealed class BatchAdditions
{
    private readonly RecipeAmounts _amounts;
    private readonly ImmutableArray<BatchStage> _stages;

    public BatchAdditions(RecipeAmounts amounts, ImmutableArray<BatchStage> stages, Mass? step)
    {
        (_amounts, _stages) = (amounts, stages);
        var parts = stages.Select((s, i) => s.Fraction - (i == 0 ? 0 : stages[i - 1].Fraction)).ToArray();
        var smallest = parts.Min() * amounts.Parts.Min(p => p.Poured.Grams);
        var needed = BatchScales.ForAdditions(smallest, amounts.Parts.Min(p => p.Poured.Grams));
        ScaleStep = step ?? needed;
        Steps = [.. stages.SelectMany(Of)];
        TooCoarse = Steps.Any(s => s.Poured == Mass.None) ? new(smallest, ScaleStep, needed) : null;
        FewSteps = smallest < BatchScales.LeastSteps * ScaleStep.Grams * (1 - 1e-9)
            ? new(ScaleStep, Math.Max(1, Math.Ceiling((BatchScales.LeastSteps * ScaleStep.Grams / smallest) - 1)), needed) : null;
    }

    /// <summary>The additions in order.</summary>
    public ImmutableArray<BatchStep> Steps { get; }

    /// <summary>Step of the scale.</summary>
    public Mass ScaleStep { get; }

    /// <summary>Why the scale can't do it; null where it can.</summary>
    public BatchRefusal.ScaleTooCoarse? TooCoarse { get; }

    /// <summary>What the reader must know of the scale; null where it is fine enough.</summary>
    public BatchNote.FewScaleSteps? FewSteps { get; }

    private IEnumerable<BatchStep> Of(BatchStage stage, int place) => _amounts.Parts.Select((part, i) =>
    {
        var sum = BatchScales.Down(part.Poured.Grams * stage.Fraction, ScaleStep);
        var before = place == 0 ? Mass.None : BatchScales.Down(part.Poured.Grams * _stages[place - 1].Fraction, ScaleStep);
        var last = i == _amounts.Parts.Length - 1;
        var thickener = part.Part.Thickener;
        var step = Mass.FromGrams(Math.Max(0, Math.Round(sum.Grams - before.Grams, 9)));
        return new BatchStep(place + 1, thickener.Name, step, sum,
            Dose.FromPercent(100 * sum.Grams * thickener.Dilution.ThickenerFraction / _amounts.Base.Grams))
        {
            Volume = Recipe.VolumeOf(thickener, step),
            IsRead = last,
            Standing = last ? stage.Standing : null,
            Expected = last ? stage.Expected : null,
            ChanceOver = last ? stage.ChanceOver : null,
        };
    });
}
