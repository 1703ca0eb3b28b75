using Viscolog.Core.Practice;

namespace Viscolog.Tui.Practice;

/// <summary>The choice of a practice pot.</summary>
internal sealed record PracticeState
{
    /// <summary>The place of the chosen difficulty, from 0.</summary>
    public int Chosen { get; init; }

    public int Seed { get; init; } = 1;

    public string Player { get; init; } = "";

    public string Said { get; init; } = "";

    public PracticeDifficulty Difficulty => PracticeDifficulty.All[Chosen];

    public PracticeGame Game => PracticeGame.Of(Difficulty, Seed);

    public PracticeState Move(int by) => this with { Chosen = Math.Clamp(Chosen + by, 0, PracticeDifficulty.All.Length - 1), Said = "" };
}
