using Viscolog.Core.Quantities;

namespace Viscolog.Core.Pots;

/// <summary>How far a colour concentrate goes: volumes of paint for one volume of concentrate.</summary>
public sealed record ColourYield
{
    /// <summary>Makes one.</summary>
    /// <param name="volumes">Volumes of paint for one of concentrate; 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is out of range.</exception>
    public ColourYield(double volumes) => Volumes = Guard.AtLeast(volumes, 1);

    /// <summary>The strong end of what is usual: 8 volumes (common practice, no source).</summary>
    public static ColourYield Strong { get; } = new(8);

    /// <summary>The weak end of what is usual: 16 volumes (common practice, no source).</summary>
    public static ColourYield Weak { get; } = new(16);

    /// <summary>Volumes of paint for one volume of concentrate.</summary>
    public double Volumes { get; }

    /// <summary>The concentrate in so much paint, of which it is a part.</summary>
    /// <param name="paint">The finished paint.</param>
    public Volume For(Volume paint) => Volume.FromMilliliters(paint.Milliliters / Volumes);
}
