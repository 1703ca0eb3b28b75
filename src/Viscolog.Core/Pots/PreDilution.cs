using Viscolog.Core.Quantities;

namespace Viscolog.Core.Pots;

/// <summary>How a thickener is cut with water before it is poured: so many parts of thickener to so many parts of water, by mass.</summary>
public sealed record PreDilution
{
    /// <summary>Makes one from its parts.</summary>
    /// <param name="thickenerParts">Parts of thickener by mass, above 0.</param>
    /// <param name="waterParts">Parts of water by mass, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A part is out of range.</exception>
    public PreDilution(double thickenerParts, double waterParts)
        => (ThickenerParts, WaterParts) = (Guard.Positive(thickenerParts), Guard.AtLeast(waterParts, 0));

    /// <summary>As supplied: no water added.</summary>
    public static PreDilution None { get; } = new(1, 0);

    /// <summary>Parts of thickener by mass.</summary>
    public double ThickenerParts { get; }

    /// <summary>Parts of water by mass.</summary>
    public double WaterParts { get; }

    /// <summary>Thickener over everything poured, above 0 and at most 1.</summary>
    public double ThickenerFraction => ThickenerParts / (ThickenerParts + WaterParts);
}
