using Viscolog.Core.Pots;

namespace Viscolog.RunFiles;

/// <summary>The observed faults by their names in files.</summary>
internal static class FaultNames
{
    private static readonly (ObservedFault Fault, string Name)[] Pairs =
    [
        (ObservedFault.Lumps, "lumps"),
        (ObservedFault.Weeping, "weeping"),
        (ObservedFault.Strings, "strings"),
        (ObservedFault.NoLevelling, "no-levelling"),
    ];

    /// <summary>Every name, in words.</summary>
    public static string List { get; } = string.Join(", ", Pairs.Select(p => p.Name));

    /// <summary>The fault of that name; null where there is none.</summary>
    public static ObservedFault? Find(string name)
    {
        var found = Array.FindIndex(Pairs, p => p.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase));
        return found < 0 ? null : Pairs[found].Fault;
    }

    /// <summary>The name of a fault.</summary>
    public static string Of(ObservedFault fault) => Array.Find(Pairs, p => p.Fault == fault).Name;
}
