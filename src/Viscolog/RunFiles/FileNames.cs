using System.Text.Json;
using Viscolog.Core.Pots;

namespace Viscolog.RunFiles;

/// <summary>The members of a set by their names in files: the names that Core gives them, in small letters with dashes.</summary>
/// <param name="members">Every member, in the order in which they are listed.</param>
internal sealed class FileNames<T>(params T[] members)
    where T : struct, Enum
{
    private readonly (T Member, string Name)[] _pairs =
    [
        .. members.Select(m => (m, JsonNamingPolicy.KebabCaseLower.ConvertName(m.ToString()))),
    ];

    /// <summary>Every member with its name.</summary>
    public IReadOnlyList<(T Member, string Name)> Names => _pairs;

    /// <summary>Every name, in words.</summary>
    public string List => string.Join(", ", _pairs.Select(p => p.Name));

    /// <summary>The member of that name; null where there is none. Capitals make no difference.</summary>
    public T? Find(string name)
    {
        var found = Array.FindIndex(_pairs, p => p.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase));
        return found < 0 ? null : _pairs[found].Member;
    }

    /// <summary>The name of a member.</summary>
    public string Of(T member) => Array.Find(_pairs, p => p.Member.Equals(member)).Name;
}

/// <summary>The sets that stand in files by name.</summary>
internal static class FileNames
{
    /// <summary>Faults that a person saw.</summary>
    public static readonly FileNames<ObservedFault> Faults = new(Enum.GetValues<ObservedFault>());

    /// <summary>What makes thickeners thicken; none of them comes last.</summary>
    public static readonly FileNames<ThickenerChemistry> Chemistries = new(
        [.. Enum.GetValues<ThickenerChemistry>().Skip(1), ThickenerChemistry.Other]);
}
