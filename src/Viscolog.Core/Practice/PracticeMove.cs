using Viscolog.Core.Quantities;

namespace Viscolog.Core.Practice;

/// <summary>What a player does. The set of cases is closed.</summary>
public abstract record PracticeMove
{
    private protected PracticeMove()
    {
    }

    /// <summary>Pours thickener in.</summary>
    /// <param name="Poured">Grams on the scale.</param>
    public sealed record Dose(Mass Poured) : PracticeMove;

    /// <summary>Lets the pot down with base.</summary>
    /// <param name="Base">Grams on the scale.</param>
    public sealed record LetDown(Mass Base) : PracticeMove;

    /// <summary>Stirs in what went in; the pot stands from then on.</summary>
    /// <param name="Time">How long.</param>
    public sealed record Stir(TimeSpan Time) : PracticeMove;

    /// <summary>Lets it stand.</summary>
    /// <param name="Time">How much longer.</param>
    public sealed record Wait(TimeSpan Time) : PracticeMove;

    /// <summary>Writes down what the instrument shows.</summary>
    public sealed record Read : PracticeMove;

    /// <summary>Calls the pot done; nothing can be done to it any more, and what hid in it may be shown.</summary>
    public sealed record End : PracticeMove;
}
