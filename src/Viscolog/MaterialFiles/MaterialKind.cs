using Viscolog.RunFiles;
using Viscolog.Text;

namespace Viscolog.MaterialFiles;

/// <summary>The kinds of material by their names in files.</summary>
internal static class MaterialKind
{
    public const string Base = "base";
    public const string Thickener = "thickener";
    public const string Method = "method";
    public const string Specification = "specification";

    /// <summary>Every kind, in the order in which files list them.</summary>
    public static IReadOnlyList<string> All { get; } = [Base, Thickener, Method, Specification];

    /// <summary>Whether a material of that kind can have that name in a file.</summary>
    public static bool CanName(string kind, string name)
        => name.Length > 0 && name.Trim().Length == name.Length && OneLine.Of(name) == name && (kind != Thickener || ThickenerLine.CanName(name));

    /// <summary>What to expect of a name of that kind.</summary>
    public static string NameAdvice(string kind) => kind == Thickener ? "a name on one line, without ';' and '='" : "a name on one line";
}
