namespace Viscolog.Tui;

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
