using System.Collections.Immutable;

namespace Viscolog.Core.Practice;

/// <summary>Three players on one pot, side by side.</summary>
/// <param name="Game">The pot.</param>
/// <param name="Paths">How they played: the impatient one, the bold one, the advised one.</param>
public sealed record Demonstration(PracticeGame Game, ImmutableArray<PracticePath> Paths)
{
    /// <summary>What was in the pot.</summary>
    public PotTruth Truth => Game.Truth;

    /// <summary>The most steps that a player made.</summary>
    public int StepCount => Paths.Max(p => p.Steps.Length);

    /// <summary>The player that wasted most.</summary>
    public PracticePath Worst => Paths.MaxBy(p => p.Score.Wasted.Grams)!;

    /// <summary>Lets the three play.</summary>
    public static Demonstration Of(PracticeGame game)
        => new(game, [PracticePlayers.Impatient(game), PracticePlayers.Bold(game), PracticePlayers.Advised(game)]);
}

/// <summary>A game that has ended, and the name of who played it.</summary>
/// <param name="Name">As the player gave it.</param>
/// <param name="Path">The game.</param>
public sealed record NamedPath(string Name, PracticePath Path);
