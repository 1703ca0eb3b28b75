using System.Collections.Frozen;

namespace Viscolog.Tables;

/// <summary>
/// Finds names that are a known key or column in a unit it does not have, such as <c>added_kg</c>. To pass over such a column
/// with a warning would leave its numbers out of the run.
/// </summary>
internal static class UnitWords
{
    private static readonly FrozenSet<string> Units = new[]
    {
        "mg", "g", "kg", "t", "oz", "lb", "ml", "l", "ms", "s", "min", "h", "c", "f", "k", "um", "mm", "cm", "m", "in",
        "pct", "ppm", "mpas", "pas", "cp", "cps", "p", "st", "cst", "mm2_s",
        "g_ml", "g_l", "kg_l", "kg_m3", "g_cm3",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    /// <summary>The known names that differ from the name in the unit only; none where it is merely unknown.</summary>
    public static IReadOnlyList<string> Meant(string name, IEnumerable<string> known)
        => Stem(name) is { } stem ? [.. known.Where(k => string.Equals(Stem(k), stem, StringComparison.OrdinalIgnoreCase))] : [];

    /// <summary>Refuses a name that differs from a known one in its unit only.</summary>
    public static void Refuse(string name, IEnumerable<string> known, Place at, Findings findings)
    {
        if (Meant(name, known) is { Count: > 0 } meant)
        {
            findings.Refuse(at, $"{string.Join(" or ", meant.Order(StringComparer.Ordinal))}: give it in that unit");
        }
    }

    // The longest unit counts: density_g_ml is a density in g_ml, not a density_g in ml.
    private static string? Stem(string name)
    {
        for (var mark = name.IndexOf('_', StringComparison.Ordinal); mark >= 0; mark = name.IndexOf('_', mark + 1))
        {
            if (mark > 0 && Units.Contains(name[(mark + 1)..]))
            {
                return name[..mark];
            }
        }

        return null;
    }
}
