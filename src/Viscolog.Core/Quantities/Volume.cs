namespace Viscolog.Core.Quantities;

/// <summary>A volume.</summary>
public readonly record struct Volume : IComparable<Volume>
{
    private Volume(double value) => Milliliters = value;

    /// <summary>The value in mL.</summary>
    public double Milliliters { get; }

    /// <summary>Makes one from mL.</summary>
    /// <param name="value">In mL; 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or out of range.</exception>
    public static Volume FromMilliliters(double value) => new(Guard.AtLeast(value, 0));

    /// <summary>Orders by size.</summary>
    public int CompareTo(Volume other) => Milliliters.CompareTo(other.Milliliters);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(Volume left, Volume right) => left.Milliliters < right.Milliliters;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(Volume left, Volume right) => left.Milliliters > right.Milliliters;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(Volume left, Volume right) => left.Milliliters <= right.Milliliters;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(Volume left, Volume right) => left.Milliliters >= right.Milliliters;
}
