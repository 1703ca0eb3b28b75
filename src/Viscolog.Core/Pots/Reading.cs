using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Pots;

/// <summary>
/// What was measured at one moment. A part that was not measured is null; at least one of value, temperature, pH, string and fault is
/// there.
/// </summary>
public sealed record Reading
{
    /// <summary>What the run's method showed.</summary>
    public InstrumentValue? Value { get; init; }

    /// <summary>Stirring after the last addition.</summary>
    public TimeSpan? Stir { get; init; }

    /// <summary>Time from the end of stirring to the reading.</summary>
    public TimeSpan? Wait { get; init; }

    /// <summary>Temperature of the pot.</summary>
    public Temperature? Temperature { get; init; }

    /// <summary>pH of the pot.</summary>
    public Acidity? Acidity { get; init; }

    /// <summary>How far a lifted stick draws a string.</summary>
    public Length? StringLength { get; init; }

    /// <summary>What was seen to be wrong.</summary>
    public ObservedFault? Fault { get; init; }

    /// <summary>Whether nothing was measured.</summary>
    public bool IsEmpty => this is { Value: null, Temperature: null, Acidity: null, StringLength: null, Fault: null };
}

/// <summary>What a person saw go wrong in the pot; each is a sign of too much thickener (common practice, no source).</summary>
public enum ObservedFault
{
    /// <summary>Lumps or seeds that stirring does not take out.</summary>
    Lumps,

    /// <summary>Liquid that comes out of the body by itself.</summary>
    Weeping,

    /// <summary>Strings where none are wanted.</summary>
    Strings,

    /// <summary>Marks of the brush or spatula that stay.</summary>
    NoLevelling,
}
