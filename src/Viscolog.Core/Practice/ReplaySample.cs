using Viscolog.Core.Pots;

namespace Viscolog.Core.Practice;

/// <summary>
/// Which readings of a run a replay judges. A posterior takes time in proportion to the readings it rests on, so judging each reading would
/// take time by their square: of a long run fewer are judged, those first that something was put into the pot after.
/// </summary>
public static class ReplaySample
{
    /// <summary>A run of so many readings, or fewer, is judged at each.</summary>
    public const int AllUpTo = 32;

    /// <summary>Readings judged of any run that has them.</summary>
    public const int Least = 8;

    /// <summary>Beyond so many readings none is judged.</summary>
    public const int Furthest = 1000;

    /// <summary>A posterior costs as much as so many readings more.</summary>
    private const int OwnCost = 128;

    /// <summary>The numbers of the readings that are judged, from 1.</summary>
    /// <param name="run">The run; entries that are void count for nothing.</param>
    public static IReadOnlySet<int> Of(Run run)
    {
        var (number, fed) = (0, new SortedSet<int>());
        foreach (var entry in run.Entries.Where(e => e.Counts).TakeWhile(_ => number <= Furthest))
        {
            number += entry is Entry.Measured ? 1 : 0;
            if (Steps.Begins(entry) && number is > 0 and < Furthest)
            {
                fed.Add(number);
            }
        }

        var last = Math.Min(number, Furthest);
        var most = MostOf(last);
        var judged = new HashSet<int>(last > 0 ? [last] : []);
        judged.UnionWith(Spread([.. fed.Except(judged)], most - judged.Count));
        judged.UnionWith(Spread([.. Enumerable.Range(1, last).Except(judged)], most - judged.Count));
        return judged;
    }

    /// <summary>How many are judged of so many.</summary>
    private static int MostOf(int readings) => Math.Min(readings, Math.Max(Least, AllUpTo * (AllUpTo + OwnCost) / (readings + OwnCost)));

    /// <summary>So many of the numbers, the first and the last among them, evenly spread.</summary>
    private static IEnumerable<int> Spread(int[] numbers, int most)
        => most >= numbers.Length
            ? numbers
            : Enumerable.Range(0, most).Select(i => numbers[i * (numbers.Length - 1) / Math.Max(1, most - 1)]);
}
