namespace Viscolog.Tests.Support;

/// <summary>
/// How much of a long sweep a test goes through: all of it where the environment variable VISCOLOG_LONG is 1, else every so-manieth
/// place and those where something changes, the same ones at every run.
/// </summary>
internal static class Sweep
{
    private static readonly bool IsWhole = Environment.GetEnvironmentVariable("VISCOLOG_LONG") == "1";

    /// <summary>The places from first to last, both included; of a sample always both, and each critical one with its neighbours.</summary>
    public static IReadOnlyList<int> Places(int first, int last, int stride, IEnumerable<int> critical)
    {
        var all = Enumerable.Range(first, last - first + 1);
        var near = critical.SelectMany(c => new[] { c - 1, c, c + 1 }).Append(last).ToHashSet();
        return [.. all.Where(p => IsWhole || (p - first) % stride == 0 || near.Contains(p))];
    }

    /// <summary>How often to try where chance chooses.</summary>
    public static int Tries(int whole, int sample) => IsWhole ? whole : sample;
}
