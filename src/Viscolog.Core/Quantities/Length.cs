namespace Viscolog.Core.Quantities;

/// <summary>A length.</summary>
public readonly record struct Length : IComparable<Length>
{
    private Length(double value) => Millimeters = value;

    /// <summary>The value in mm.</summary>
    public double Millimeters { get; }

    /// <summary>Makes one from mm.</summary>
    /// <param name="value">In mm; 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or out of range.</exception>
    public static Length FromMillimeters(double value) => new(Guard.AtLeast(value, 0));

    /// <summary>Orders by size.</summary>
    public int CompareTo(Length other) => Millimeters.CompareTo(other.Millimeters);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(Length left, Length right) => left.Millimeters < right.Millimeters;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(Length left, Length right) => left.Millimeters > right.Millimeters;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(Length left, Length right) => left.Millimeters <= right.Millimeters;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(Length left, Length right) => left.Millimeters >= right.Millimeters;
}
