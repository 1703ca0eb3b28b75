namespace Viscolog.Core.Quantities;

/// <summary>A pH value.</summary>
public readonly record struct Acidity : IComparable<Acidity>
{
    private Acidity(double value) => Ph = value;

    /// <summary>The value in pH units.</summary>
    public double Ph { get; }

    /// <summary>Makes one from pH units.</summary>
    /// <param name="value">In pH units; 0 to 14.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or out of range.</exception>
    public static Acidity FromPh(double value) => new(Guard.Between(value, 0, 14));

    /// <summary>Orders by size.</summary>
    public int CompareTo(Acidity other) => Ph.CompareTo(other.Ph);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(Acidity left, Acidity right) => left.Ph < right.Ph;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(Acidity left, Acidity right) => left.Ph > right.Ph;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(Acidity left, Acidity right) => left.Ph <= right.Ph;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(Acidity left, Acidity right) => left.Ph >= right.Ph;
}

/// <summary>The pH values that are wanted.</summary>
/// <param name="Low">The least wanted.</param>
/// <param name="High">The greatest wanted; above the least.</param>
public sealed record AcidityBand(Acidity Low, Acidity High)
{
    /// <summary>The greatest wanted; above the least.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not above the least.</exception>
    public Acidity High { get; } = High > Low
        ? High
        : throw new ArgumentOutOfRangeException(nameof(High), High.Ph, "must be above the least pH");
}
