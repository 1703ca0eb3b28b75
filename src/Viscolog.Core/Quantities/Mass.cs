namespace Viscolog.Core.Quantities;

/// <summary>A mass.</summary>
public readonly record struct Mass : IComparable<Mass>
{
    private Mass(double value) => Grams = value;

    /// <summary>The value in g.</summary>
    public double Grams { get; }

    /// <summary>Makes one from g.</summary>
    /// <param name="value">In g; 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or out of range.</exception>
    public static Mass FromGrams(double value) => new(Guard.AtLeast(value, 0));

    /// <summary>Nothing.</summary>
    public static Mass None => default;

    /// <summary>The sum of two masses.</summary>
    public static Mass operator +(Mass left, Mass right) => FromGrams(left.Grams + right.Grams);

    /// <summary>Orders by size.</summary>
    public int CompareTo(Mass other) => Grams.CompareTo(other.Grams);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(Mass left, Mass right) => left.Grams < right.Grams;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(Mass left, Mass right) => left.Grams > right.Grams;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(Mass left, Mass right) => left.Grams <= right.Grams;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(Mass left, Mass right) => left.Grams >= right.Grams;
}
