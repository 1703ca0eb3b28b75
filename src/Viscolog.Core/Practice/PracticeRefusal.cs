using Viscolog.Core.Quantities;

namespace Viscolog.Core.Practice;

/// <summary>Why a move of a practice game can't be done. The set of cases is closed.</summary>
public abstract record PracticeRefusal
{
    private protected PracticeRefusal()
    {
    }

    /// <summary>The game has ended.</summary>
    public sealed record GameEnded : PracticeRefusal;

    /// <summary>No dose, or more than a pot takes.</summary>
    /// <param name="Most">The most at once.</param>
    public sealed record DoseOutside(Mass Most) : PracticeRefusal;

    /// <summary>No base, or more than a pot takes.</summary>
    /// <param name="Most">The most at once.</param>
    public sealed record BaseOutside(Mass Most) : PracticeRefusal;

    /// <summary>Nothing went in since the last stirring.</summary>
    public sealed record NothingToStir : PracticeRefusal;

    /// <summary>Stirred for too short or too long a time.</summary>
    /// <param name="Least">The shortest time.</param>
    /// <param name="Most">The longest.</param>
    public sealed record StirringOutside(TimeSpan Least, TimeSpan Most) : PracticeRefusal;

    /// <summary>No standing, or more than can be waited at a time.</summary>
    /// <param name="Most">The longest time.</param>
    public sealed record StandingOutside(TimeSpan Most) : PracticeRefusal;

    /// <summary>What went in is not stirred in yet.</summary>
    /// <param name="Before">What was to be done.</param>
    public sealed record StirFirst(PracticeMove Before) : PracticeRefusal;
}
