using Viscolog.Core.Quantities;

namespace Viscolog.Core.Pots;

/// <summary>The string lengths that are wanted.</summary>
/// <param name="Low">The least wanted.</param>
/// <param name="High">The greatest wanted; above the least.</param>
public sealed record StringBand(Length Low, Length High)
{
    /// <summary>The greatest wanted; above the least.</summary>
    public Length High { get; } = High > Low ? High : throw new ArgumentOutOfRangeException(nameof(High), High.Millimeters, "must be above the least length");
}
