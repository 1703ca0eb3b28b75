using Viscolog.Core.Quantities;

namespace Viscolog.Core.Pots;

/// <summary>One thing that happened to a pot. The set of cases is closed.</summary>
public abstract record Entry
{
    private protected Entry()
    {
    }

    /// <summary>When it happened; null where nobody wrote it down.</summary>
    public DateTimeOffset? Time { get; init; }

    /// <summary>Why the entry counts no more; null while it counts.</summary>
    public string? VoidReason { get; init; }

    /// <summary>Whether the entry counts.</summary>
    public bool Counts => VoidReason is null;

    /// <summary>A thickener was poured in.</summary>
    /// <param name="Thickener">Its name in the run.</param>
    /// <param name="Poured">Thickener with its dilution water; above 0.</param>
    public sealed record Dosed(string Thickener, Mass Poured) : Entry;

    /// <summary>Something was measured.</summary>
    /// <param name="Reading">What.</param>
    public sealed record Measured(Reading Reading) : Entry;

    /// <summary>A sample was taken out.</summary>
    /// <param name="Sample">Its mass; above 0.</param>
    public sealed record TakenOut(Mass Sample) : Entry;

    /// <summary>Base was added.</summary>
    /// <param name="Base">Its mass; above 0.</param>
    public sealed record LetDown(Mass Base) : Entry;

    /// <summary>Water was added.</summary>
    /// <param name="Water">Its mass; above 0.</param>
    public sealed record Watered(Mass Water) : Entry;

    /// <summary>Something worth remembering.</summary>
    /// <param name="Text">Not empty.</param>
    public sealed record Noted(string Text) : Entry;
}
