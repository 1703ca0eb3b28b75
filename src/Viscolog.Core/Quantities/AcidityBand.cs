namespace Viscolog.Core.Quantities;

/// <summary>The pH values that are wanted.</summary>
/// <param name="Low">The least wanted.</param>
/// <param name="High">The greatest wanted; above the least.</param>
public sealed record AcidityBand(Acidity Low, Acidity High)
{
    /// <summary>The greatest wanted; above the least.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not above the least.</exception>
    public Acidity High { get; } = High > Low ? High : throw new ArgumentOutOfRangeException(nameof(High), High.Ph, "must be above the least pH");
}
