using System.Collections.Immutable;

namespace Viscolog.Core.Observing;

/// <summary>
/// Which of a step's readings count where there are very many, as an instrument gives them: the cost of advice grows with their number,
/// and readings a few seconds apart tell little that their neighbours do not. A rule of this project.
/// </summary>
internal static class Thinning
{
    /// <summary>Steps of a run that are looked at, at most.</summary>
    public const int MostSteps = 1000;

    /// <summary>Readings of a step that count, at most.</summary>
    public const int MostOfStep = 60;

    private const int MostOfRun = 3000;
    private const int LeastOfStep = 3;

    /// <summary>
    /// Those that count of a step's readings: all of them where they are few; else the first and the last and, between them, half of the
    /// number evenly and half ever farther apart, as most of the build-up is at the beginning.
    /// </summary>
    /// <param name="readings">The step's readings in order.</param>
    /// <param name="steps">How many steps the run has.</param>
    public static ImmutableArray<T> Of<T>(ImmutableArray<T> readings, int steps)
    {
        var most = Math.Clamp(MostOfRun / steps, LeastOfStep, MostOfStep);
        if (readings.Length <= most)
        {
            return readings;
        }

        var (last, half) = (readings.Length - 1, most / 2);
        var early = Enumerable.Range(0, half).Select(i => (int)Math.Round(Math.Pow(readings.Length, (double)i / half)) - 1);
        var even = Enumerable.Range(1, most - half).Select(i => (int)((long)last * i / (most - half)));
        return [.. early.Concat(even).Distinct().Order().Select(i => readings[i])];
    }
}
