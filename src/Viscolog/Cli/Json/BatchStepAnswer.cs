using Viscolog.Core.Batches;

namespace Viscolog.Cli.Json;

/// <summary>One addition of a batch.</summary>
internal sealed record BatchStepAnswer(int Step, string Thickener, double AddG, double SoFarG, double DosePct, double? WaitS, BodyAnswer? ExpectedMpas)
{
    public static BatchStepAnswer Of(BatchStep step) => new(
        step.Stage, step.Thickener, step.Poured.Grams, step.PouredSoFar.Grams, Rounded.Four(step.After.Percent),
        step.Standing?.TotalSeconds, step.Expected is { } expected ? BodyAnswer.Of(expected) : null);
}
