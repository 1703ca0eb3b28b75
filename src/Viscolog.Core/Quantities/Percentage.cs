namespace Viscolog.Core.Quantities;

/// <summary>A part of a whole, a relative deviation or a chance.</summary>
public readonly record struct Percentage : IComparable<Percentage>
{
    private Percentage(double value) => Percent = value;

    /// <summary>The value in per cent.</summary>
    public double Percent { get; }

    /// <summary>Makes one from per cent.</summary>
    /// <param name="value">In per cent; 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or out of range.</exception>
    public static Percentage FromPercent(double value) => new(Guard.AtLeast(value, 0));

    /// <summary>The value as a fraction: 15 % is 0.15.</summary>
    public double Fraction => Percent / 100;

    /// <summary>Makes one from a fraction: 0.15 is 15 %.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or below 0.</exception>
    public static Percentage FromFraction(double value) => FromPercent(value * 100);

    /// <summary>Orders by size.</summary>
    public int CompareTo(Percentage other) => Percent.CompareTo(other.Percent);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(Percentage left, Percentage right) => left.Percent < right.Percent;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(Percentage left, Percentage right) => left.Percent > right.Percent;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(Percentage left, Percentage right) => left.Percent <= right.Percent;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(Percentage left, Percentage right) => left.Percent >= right.Percent;
}
