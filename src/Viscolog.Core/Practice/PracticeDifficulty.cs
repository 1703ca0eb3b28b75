using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Practice;

/// <summary>A kind of practice pot, named by what makes it hard.</summary>
/// <param name="Name">One plain word, as it is typed.</param>
/// <param name="Level">From 1, the easiest, up to 6.</param>
public sealed record PracticeDifficulty(string Name, int Level)
{
    /// <summary>All of them, the easiest first.</summary>
    public static ImmutableArray<PracticeDifficulty> All { get; } =
    [
        new("easy", 1)
        {
            Families = [0],
            Places = (0.35, 0.7),
            TimeConstants = (6, 12),
            ReadingError = 0.03,
            DosingError = 0.01,
        },
        new("flat", 2)
        {
            Families = [2],
            Places = (0.6, 0.9),
            TimeConstants = (10, 25),
            ReadingError = 0.03,
            DosingError = 0.01,
        },
        new("slow", 3)
        {
            Families = [0, 1, 4],
            Places = (0.35, 0.7),
            TimeConstants = (25, 45),
            ReadingError = 0.03,
            DosingError = 0.01,
        },
        new("steep", 4)
        {
            Families = [1, 7],
            Places = (0.35, 0.75),
            TimeConstants = (10, 30),
            ReadingError = 0.04,
            DosingError = 0.02,
        },
        new("peaked", 5)
        {
            Families = [6],
            Places = (0.5, 0.85),
            TimeConstants = (10, 40),
            ReadingError = 0.04,
            DosingError = 0.02,
        },
        new("hard", 6)
        {
            Families = [.. Enumerable.Range(0, HiddenLaws.FamilyCount)],
            Places = (0.3, 0.9),
            TimeConstants = (6, 60),
            ReadingError = 0.04,
            DosingError = 0.02,
        },
    ];

    /// <summary>The families of laws it draws from.</summary>
    internal ImmutableArray<int> Families { get; init; } = [];

    /// <summary>Where the aim lies, over the useful part of the law.</summary>
    internal (double Low, double High) Places { get; init; }

    /// <summary>Bounds of τ in s.</summary>
    internal (double Low, double High) TimeConstants { get; init; }

    /// <summary>Standard deviation of ln of a reading.</summary>
    internal double ReadingError { get; init; }

    /// <summary>Relative standard deviation of a dose.</summary>
    internal double DosingError { get; init; }

    /// <summary>The difficulty of that name; null where there is none.</summary>
    public static PracticeDifficulty? Find(string name)
        => All.FirstOrDefault(d => string.Equals(d.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>The repeatability that a player is told.</summary>
    public Percentage Repeatability => Percentage.FromFraction(ReadingError);
}
