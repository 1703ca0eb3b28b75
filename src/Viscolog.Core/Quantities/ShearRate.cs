namespace Viscolog.Core.Quantities;

/// <summary>A shear rate.</summary>
public readonly record struct ShearRate : IComparable<ShearRate>
{
    private ShearRate(double value) => PerSecond = value;

    /// <summary>The value in 1/s.</summary>
    public double PerSecond { get; }

    /// <summary>Makes one from 1/s.</summary>
    /// <param name="value">In 1/s; above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or out of range.</exception>
    public static ShearRate FromPerSecond(double value) => new(Guard.Positive(value));

    /// <summary>Orders by size.</summary>
    public int CompareTo(ShearRate other) => PerSecond.CompareTo(other.PerSecond);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(ShearRate left, ShearRate right) => left.PerSecond < right.PerSecond;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(ShearRate left, ShearRate right) => left.PerSecond > right.PerSecond;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(ShearRate left, ShearRate right) => left.PerSecond <= right.PerSecond;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(ShearRate left, ShearRate right) => left.PerSecond >= right.PerSecond;
}
