namespace Viscolog.Core.Checking;

/// <summary>Why a verdict can't be told yet. The set of cases is closed.</summary>
public abstract record Doubt
{
    private protected Doubt()
    {
    }

    /// <summary>The readings of the pot fall over time.</summary>
    public sealed record ReadingsFall : Doubt;

    /// <summary>No reading has settled yet.</summary>
    public sealed record NothingSettled : Doubt;

    /// <summary>A verdict needs more readings.</summary>
    /// <param name="Needed">So many.</param>
    /// <param name="There">So many count.</param>
    public sealed record TooFewReadings(int Needed, int There) : Doubt;

    /// <summary>A pH is asked for and was not read.</summary>
    public sealed record PhNotRead : Doubt;

    /// <summary>A string length is asked for and was not read.</summary>
    public sealed record StringNotRead : Doubt;

    /// <summary>The value lies too near a limit for its uncertainty.</summary>
    public sealed record BodyNearLimit : Doubt;

    /// <summary>No mean would be accepted yet, wherever it lies.</summary>
    public sealed record BodyTooUnsure : Doubt;

    /// <summary>The pH lies too near a limit for what a bench meter can tell.</summary>
    public sealed record PhNearLimit : Doubt;

    /// <summary>The string length lies too near a limit for its uncertainty.</summary>
    public sealed record StringNearLimit : Doubt;
}
