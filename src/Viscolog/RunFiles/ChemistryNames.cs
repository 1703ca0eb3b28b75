using Viscolog.Core.Pots;

namespace Viscolog.RunFiles;

/// <summary>The chemistries by their names in files.</summary>
internal static class ChemistryNames
{
    private static readonly (ThickenerChemistry Chemistry, string Name)[] Pairs =
    [
        (ThickenerChemistry.AlkaliSwellable, "alkali-swellable"),
        (ThickenerChemistry.Associative, "associative"),
        (ThickenerChemistry.Cellulosic, "cellulosic"),
        (ThickenerChemistry.Clay, "clay"),
        (ThickenerChemistry.Other, "other"),
    ];

    /// <summary>Every name, in words.</summary>
    public static string List { get; } = string.Join(", ", Pairs.Select(p => p.Name));

    /// <summary>The chemistry of that name; null where there is none.</summary>
    public static ThickenerChemistry? Find(string name)
    {
        var found = Array.FindIndex(Pairs, p => p.Name.Equals(name, StringComparison.OrdinalIgnoreCase));
        return found < 0 ? null : Pairs[found].Chemistry;
    }

    /// <summary>The name of a chemistry.</summary>
    public static string Of(ThickenerChemistry chemistry) => Array.Find(Pairs, p => p.Chemistry == chemistry).Name;
}
