using Viscolog.Core.Practice;

namespace Viscolog.Tui.Practice;

/// <summary>What a practice game asks the world to do. The set of cases is closed.</summary>
internal abstract record GameEffect
{
    private GameEffect()
    {
    }

    /// <summary>Work the advised way out on the same pot.</summary>
    internal sealed record Compare(PracticeGame Game) : GameEffect;

    /// <summary>Keep the score.</summary>
    internal sealed record Keep(string Player, PracticePath Path) : GameEffect;
}
