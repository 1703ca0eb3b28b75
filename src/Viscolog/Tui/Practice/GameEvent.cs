using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;

namespace Viscolog.Tui.Practice;

/// <summary>What can happen while a practice pot is played. The set of cases is closed.</summary>
internal abstract record GameEvent
{
    private GameEvent()
    {
    }

    /// <summary>Enter was pressed: grams to pour, or nothing, which writes the reading down.</summary>
    internal sealed record Typed(string Grams) : GameEvent;

    /// <summary>Base went in.</summary>
    internal sealed record LetDown(Mass Grams) : GameEvent;

    /// <summary>The form for base was called for.</summary>
    internal sealed record LetDownCalled : GameEvent;

    /// <summary>The stir key was pressed.</summary>
    internal sealed record Stir : GameEvent;

    /// <summary>The key for fast time was pressed.</summary>
    internal sealed record Hurry : GameEvent;

    /// <summary>The pot is called done.</summary>
    internal sealed record End : GameEvent;

    /// <summary>The same pot is to be played again.</summary>
    internal sealed record Again : GameEvent;

    /// <summary>Picture or handout is to be written.</summary>
    internal sealed record Exported : GameEvent;

    /// <summary>The advised way on the same pot is worked out.</summary>
    internal sealed record Compared(PracticePath Advised) : GameEvent;

    /// <summary>The score was kept, or not.</summary>
    internal sealed record Kept(string Said) : GameEvent;

    /// <summary>The next view of what came of it.</summary>
    internal sealed record Turned : GameEvent;

    /// <summary>The text was moved.</summary>
    internal sealed record Moved(int Lines) : GameEvent;

    /// <summary>The screen is about to be left while the game goes on.</summary>
    internal sealed record Leaving : GameEvent;

    /// <summary>Time went by.</summary>
    internal sealed record Ticked : GameEvent;
}
