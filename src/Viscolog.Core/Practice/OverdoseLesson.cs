using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Practice;

/// <summary>
/// Why over-dosing is a dead end, on one's own pot: what a gram buys, where the curve flattens or falls, what saving the pot costs.
/// </summary>
public sealed record OverdoseLesson
{
    /// <summary>Doses, as parts of the one that the aim needs, at which the cost of saving the pot is told.</summary>
    private static readonly double[] Parts = [1.1, 1.25, 1.5, 2];

    /// <summary>What was in the pot.</summary>
    public required PotTruth Truth { get; init; }

    /// <summary>The greatest dose that the pot had.</summary>
    public required Dose Greatest { get; init; }

    /// <summary>The dose where a gram bought most in proportion.</summary>
    public required Dose Steepest { get; init; }

    /// <summary>What the cost of saving the pot would be at several doses.</summary>
    public required ImmutableArray<LetDownCost> Costs { get; init; }

    /// <summary>What saving the pot costs at the greatest dose that it had; null where it never was over.</summary>
    public required LetDownCost? Own { get; init; }

    /// <summary>Draws the lesson of a game.</summary>
    public static OverdoseLesson Of(PracticePath path)
    {
        var truth = path.Truth;
        var greatest = path.Steps.Select(s => s.Dose).Max();
        return new()
        {
            Truth = truth,
            Greatest = greatest,
            Steepest = truth.Steepest(),
            Costs = [.. Parts.Select(part => LetDownCost.Of(truth, Dose.FromPercent(part * truth.Needed.Percent)))],
            Own = path.Score.WentOver ? LetDownCost.Of(truth, greatest) : null,
        };
    }
}
