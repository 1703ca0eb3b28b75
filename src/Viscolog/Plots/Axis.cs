using System.Collections.Immutable;

namespace Viscolog.Plots;

/// <summary>One axis of a panel.</summary>
/// <param name="Title">What it counts, with the unit, as a file says it.</param>
/// <param name="Short">The same in characters.</param>
/// <param name="Low">Where it begins; above 0 on a logarithmic axis.</param>
/// <param name="High">Where it ends; above <paramref name="Low"/>.</param>
/// <param name="IsLogarithmic">Whether equal steps are equal ratios.</param>
internal sealed record Axis(string Title, string Short, double Low, double High, bool IsLogarithmic = false)
{
    /// <summary>Where it begins in the picture, as a share of its width or height.</summary>
    public double From { get; init; }

    /// <summary>Where it ends.</summary>
    public double To { get; init; } = 1;

    /// <summary>The share of its length that a file adds before <see cref="Low"/>, so that marks there stay whole.</summary>
    public double Room { get; init; }

    /// <summary>The least step from one label to the next in a file.</summary>
    public double LeastStep { get; init; }

    /// <summary>Whether a file draws a grid from it.</summary>
    public bool HasGrid { get; init; } = true;

    /// <summary>The names of counted places, the first at 1; empty where values are counted.</summary>
    public ImmutableArray<string> Names { get; init; } = [];

    /// <summary>What a file writes at a value; null for the number.</summary>
    public Func<double, string>? Label { get; init; }

    /// <summary>The place among <paramref name="count"/> places, the first at <see cref="Low"/>; off the axis it is none of them.</summary>
    public int Place(double value, int count)
    {
        var part = IsLogarithmic ? Math.Log(value / Low) / Math.Log(High / Low) : (value - Low) / (High - Low);
        return double.IsNaN(part) ? -1 : (int)Math.Round(Math.Clamp(part, -1, 2) * (count - 1));
    }

    /// <summary>The value at a place.</summary>
    public double At(int place, int count)
    {
        var part = place / (double)Math.Max(1, count - 1);
        return IsLogarithmic ? Low * Math.Pow(High / Low, part) : Low + (part * (High - Low));
    }

    /// <summary>The values that are labelled in characters, the ones to keep first where two would share a place.</summary>
    /// <param name="most">About how many.</param>
    public IEnumerable<double> Marks(int most) => !Names.IsEmpty
        ? Enumerable.Range(1, Names.Length).Select(i => (double)i)
        : IsLogarithmic ? Ticks.Logarithmic(Low, High).OrderBy(v => Math.Abs(Math.Log10(v) - Math.Round(Math.Log10(v))) > 1e-9)
        : Ticks.Even(Low, High, most).OrderBy(v => Math.Abs(v));

    /// <summary>The ends of a logarithmic axis that holds values with room around them.</summary>
    /// <param name="values">Above 0.</param>
    /// <param name="room">The share of their spread, in the logarithm, to add at each end; at least 1.25 times as much in ln units.</param>
    public static (double Low, double High) Around(IEnumerable<double> values, double room)
    {
        double[] all = [.. values];
        var pad = Math.Max(room * Math.Log(all.Max() / all.Min()), 1.25 * room);
        return (all.Min() * Math.Exp(-pad), all.Max() * Math.Exp(pad));
    }
}

/// <summary>The round values in a range.</summary>
internal static class Ticks
{
    /// <summary>Powers of ten over many decades, 1–2–5 over few, even steps over a part of one.</summary>
    /// <param name="low">Above 0.</param>
    /// <param name="high">Above <paramref name="low"/>.</param>
    public static IReadOnlyList<double> Logarithmic(double low, double high)
    {
        var decades = Math.Log10(high / low);
        var powers = Of([1], low, high);
        if (decades > 8)
        {
            return [.. powers.Where((_, i) => i % (int)Math.Ceiling(decades / 8) == 0)];
        }

        if (decades > 3.2)
        {
            return powers;
        }

        var few = Of([1, 2, 5], low, high);
        return few.Count >= 3 ? few : Even(low, high, 5);
    }

    /// <summary>The multiples 1 to 9 of each power of ten.</summary>
    public static IReadOnlyList<double> Minor(double low, double high) => Of([1, 2, 3, 4, 5, 6, 7, 8, 9], low, high);

    /// <summary>Steps of 1, 2 or 5 times a power of ten.</summary>
    /// <param name="low">Where to begin.</param>
    /// <param name="high">Above <paramref name="low"/>.</param>
    /// <param name="count">About how many steps.</param>
    public static IReadOnlyList<double> Even(double low, double high, int count)
    {
        var raw = (high - low) / Math.Max(count, 1);
        var power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        var step = (raw / power) switch { < 1.5 => 1, < 3.5 => 2, < 7.5 => 5, _ => 10 } * power;
        var result = new List<double>();
        for (var k = Math.Ceiling(low / step); k * step <= high && result.Count < 1000; k++)
        {
            result.Add(k * step);
        }

        return result;
    }

    private static List<double> Of(double[] multiples, double low, double high)
    {
        var result = new List<double>();
        for (var power = (int)Math.Floor(Math.Log10(low)); power <= Math.Ceiling(Math.Log10(high)); power++)
        {
            result.AddRange(multiples.Select(m => Math.Round(m) * Math.Pow(10, power)).Where(v => v >= low && v <= high));
        }

        return result;
    }
}
