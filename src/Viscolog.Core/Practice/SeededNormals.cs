namespace Viscolog.Core.Practice;

/// <summary>Standard normal numbers that hang on their keys alone, so that a pot answers alike whatever was asked of it before.</summary>
internal static class SeededNormals
{
    /// <summary>The number of these keys; by Box and Muller from two uniform ones.</summary>
    public static double At(params ReadOnlySpan<long> keys)
    {
        var state = 0UL;
        foreach (var key in keys)
        {
            state = Mixed(state ^ unchecked((ulong)key));
        }

        var first = Uniform(Mixed(state + 1));
        var second = Uniform(Mixed(state + 2));
        return Math.Sqrt(-2 * Math.Log(1 - first)) * Math.Cos(2 * Math.PI * second);
    }

    /// <summary>SplitMix64 (Steele, Lea and Flood, OOPSLA 2014; constants from memory).</summary>
    private static ulong Mixed(ulong value)
    {
        unchecked
        {
            value += 0x9E3779B97F4A7C15;
            value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9;
            value = (value ^ (value >> 27)) * 0x94D049BB133111EB;
            return value ^ (value >> 31);
        }
    }

    private static double Uniform(ulong bits) => (bits >> 11) * (1.0 / (1UL << 53));
}
