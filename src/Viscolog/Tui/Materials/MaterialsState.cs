using System.Collections.Immutable;
using Viscolog.MaterialFiles;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Materials;

/// <summary>The list of materials.</summary>
/// <param name="All">Every material, kind by kind.</param>
internal sealed record MaterialsState(ImmutableArray<MaterialRow> All)
{
    public int Chosen { get; init; }

    /// <summary>How the methods read certified oils, in words by the method's id.</summary>
    public ImmutableDictionary<string, string> Drifts { get; init; } = ImmutableDictionary<string, string>.Empty;

    public string Said { get; init; } = "";

    public MaterialRow? Current => All.IsEmpty ? null : All[Math.Clamp(Chosen, 0, All.Length - 1)];

    public MaterialsState Move(int by) => this with { Chosen = Scrolling.Moved(Chosen, by, All.Length) };
}
