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

/// <summary>A length that is not known exactly: its median and an interval that holds it with a stated chance.</summary>
/// <param name="Median">As likely to be above as below.</param>
/// <param name="Low">The interval's low end.</param>
/// <param name="High">The interval's high end.</param>
/// <param name="Level">The chance that the interval holds the value.</param>
public sealed record LengthEstimate(Length Median, Length Low, Length High, Percentage Level);
