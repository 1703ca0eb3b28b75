using System.Collections.Immutable;
using Viscolog.PracticeFiles;

namespace Viscolog.Tui.Practice;

/// <summary>The class's score sheet.</summary>
/// <param name="Results">The games, in the order in which they ended.</param>
internal sealed record ScoresState(ImmutableArray<PracticeResult> Results)
{
    /// <summary>Games above the screen.</summary>
    public int Above { get; init; }

    public string Said { get; init; } = "";

    public ScoresState Move(int by) => this with { Above = Math.Clamp(Above + by, 0, Math.Max(0, Results.Length - 1)) };
}
