using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>How much work a belief is worth.</summary>
/// <param name="FirstDraws">Draws a shape in the first round.</param>
/// <param name="LaterDraws">Draws a shape in each later round.</param>
/// <param name="Cases">Cases that the finished belief keeps.</param>
/// <param name="Tempering">How much of the likelihood each round counts; the last is 1.</param>
internal sealed record BeliefEffort(int FirstDraws, int LaterDraws, int Cases, ImmutableArray<double> Tempering)
{
    /// <summary>For the run that is advised on.</summary>
    public static BeliefEffort Full { get; } = new(2000, 1000, BeliefSettings.Cases, [0.1, 0.3, 0.6, 1]);

    /// <summary>For an earlier run, of which moments are wanted only.</summary>
    public static BeliefEffort Moments { get; } = new(400, 200, 50, [0.1, 0.4, 1]);
}
