using Viscolog.Core.Checking;
using Viscolog.RunFiles;

namespace Viscolog.MaterialFiles;

/// <summary>A column of a materials file.</summary>
/// <param name="Name">Its name in the header row.</param>
/// <param name="Kinds">The kinds of material that have it.</param>
/// <param name="Take">Takes a cell's text into the material; space at its ends is gone, unless the column keeps texts as they stand.</param>
/// <param name="Show">What a material writes in it; null for an empty cell.</param>
internal sealed record MaterialColumn(string Name, IReadOnlyList<string> Kinds, Action<MaterialDraft, Place, string> Take, Func<Material, string?> Show)
{
    /// <summary>Whether the text is kept as it stands.</summary>
    public bool IsVerbatim { get; init; }
}
