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
}
