namespace Viscolog.Core.Quantities;

/// <summary>A shear stress.</summary>
public readonly record struct Stress : IComparable<Stress>
{
    private Stress(double value) => Pascals = value;

    /// <summary>The value in Pa.</summary>
    public double Pascals { get; }

    /// <summary>Makes one from Pa.</summary>
    /// <param name="value">In Pa; 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or out of range.</exception>
    public static Stress FromPascals(double value) => new(Guard.AtLeast(value, 0));

    /// <summary>Orders by size.</summary>
    public int CompareTo(Stress other) => Pascals.CompareTo(other.Pascals);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(Stress left, Stress right) => left.Pascals < right.Pascals;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(Stress left, Stress right) => left.Pascals > right.Pascals;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(Stress left, Stress right) => left.Pascals <= right.Pascals;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(Stress left, Stress right) => left.Pascals >= right.Pascals;
}
