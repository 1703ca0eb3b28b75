using Viscolog.Core.Batches;
using Viscolog.Wording;

namespace Viscolog.Cli.Json;

/// <summary>The plan of a batch as <c>viscolog.batch/1</c>.</summary>
internal sealed record BatchAnswer() : Answer("viscolog.batch/1")
{
    public string? Run { get; init; }
    public double TotalG { get; init; }
    public double? TotalMl { get; init; }
    public double BaseG { get; init; }
    public double WaterG { get; init; }
    public required IReadOnlyList<BatchPartAnswer> Thickeners { get; init; }
    public required IReadOnlyList<BatchStepAnswer> Steps { get; init; }
    public double ScaleStepG { get; init; }
    public double BaseScaleStepG { get; init; }
    public double? StirS { get; init; }
    public required string Source { get; init; }
    public required IReadOnlyList<string> Warnings { get; init; }
    public required IReadOnlyList<string> Cautions { get; init; }

    public static BatchAnswer Of(BatchPlan plan, IEnumerable<string> warnings) => new()
    {
        Run = plan.Run.Name,
        TotalG = Rounded.Grams(plan.Amounts.Total),
        TotalMl = plan.Volume is { } volume ? Rounded.Four(volume.Milliliters) : null,
        BaseG = plan.Amounts.Base.Grams,
        WaterG = Rounded.Grams(plan.Amounts.Water),
        Thickeners = [.. plan.Amounts.Parts
            .Select(p => new BatchPartAnswer(
                p.Part.Thickener.Name, Rounded.Four(p.Part.Dose.Percent), Rounded.Grams(p.Neat), Rounded.Grams(p.Water)))],
        Steps = [.. plan.Steps.Select(BatchStepAnswer.Of)],
        ScaleStepG = plan.ScaleStep.Grams,
        BaseScaleStepG = plan.BaseScaleStep.Grams,
        StirS = plan.Stir?.TotalSeconds,
        Source = BatchWords.Of(plan.Source),
        Warnings = [.. warnings, .. plan.Notes.Select(BatchWords.Of)],
        Cautions = [.. plan.Cautions.Select(CautionWords.Of)],
    };
}

/// <summary>One thickener of a batch.</summary>
internal sealed record BatchPartAnswer(string Thickener, double DosePct, double ThickenerG, double WaterG);

/// <summary>One addition of a batch.</summary>
internal sealed record BatchStepAnswer(
    int Step, string Thickener, double AddG, double SoFarG, double DosePct, double? WaitS, BodyAnswer? ExpectedMpas)
{
    public static BatchStepAnswer Of(BatchStep step) => new(
        step.Stage, step.Thickener, step.Poured.Grams, step.PouredSoFar.Grams, Rounded.Four(step.After.Percent),
        step.Standing?.TotalSeconds, step.Expected is { } expected ? BodyAnswer.Of(expected) : null);
}
