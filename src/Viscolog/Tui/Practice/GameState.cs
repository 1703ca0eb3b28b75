using System.Collections.Immutable;
using Viscolog.Core.Practice;
using Viscolog.Tui.Pattern;
using Viscolog.Wording;

namespace Viscolog.Tui.Practice;

/// <summary>A practice pot being played; every event makes a new state.</summary>
/// <param name="Session">The game.</param>
/// <param name="Player">The player's name; empty where no score is kept.</param>
/// <param name="LastTick">The last moment that the game's time knows of.</param>
internal sealed record GameState(PracticeSession Session, string Player, DateTimeOffset LastTick)
{
    /// <summary>How much faster than the clock the game's time goes: 1 or 10.</summary>
    public int Speed { get; init; } = 1;

    /// <summary>How long has been stirred; null while nobody stirs.</summary>
    public TimeSpan? Stirring { get; init; }

    /// <summary>What the instrument showed since the last stirring, a value for each few seconds.</summary>
    public ImmutableArray<double> Trace { get; init; } = [];

    /// <summary>The game with the truth beside it, once it has ended.</summary>
    public PracticePath? Path { get; init; }

    /// <summary>The advised way on the same pot, once it is worked out.</summary>
    public PracticePath? Advised { get; init; }

    public GameView View { get; init; }

    /// <summary>Lines of text above the screen.</summary>
    public Scrolling Above { get; init; }

    /// <summary>What is wrong with what was typed; null where nothing is.</summary>
    public string? Error { get; init; }

    public string Said { get; init; } = "";

    /// <summary>Grows when the field is to be emptied.</summary>
    public int Entered { get; init; }

    /// <summary>The player as the picture names him.</summary>
    public string Name => Player.Length > 0 ? Player : PracticeWords.Name(PracticePlayer.Person);

    /// <summary>The player's way, and the advised one where that is known.</summary>
    public ImmutableArray<NamedPath> Players(PracticePath own)
        => Advised is { } advised ? [new(Name, own), new(PracticeWords.Name(PracticePlayer.Advised), advised)] : [new(Name, own)];
}

/// <summary>What is shown of a game that has ended.</summary>
internal enum GameView
{
    /// <summary>The hidden curve with both ways.</summary>
    Curve,

    /// <summary>Where it went over, and why over-dosing is a dead end.</summary>
    Why,

    /// <summary>The game step by step.</summary>
    Steps,
}
