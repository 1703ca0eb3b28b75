namespace Viscolog.Core.Quantities;

/// <summary>Thickener in the pot as supplied, over the base in the pot.</summary>
public readonly record struct Dose : IComparable<Dose>
{
    private Dose(double value) => Percent = value;

    /// <summary>The value in g per 100 g of base (%).</summary>
    public double Percent { get; }

    /// <summary>Makes one from g per 100 g of base (%).</summary>
    /// <param name="value">In g per 100 g of base (%); 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or out of range.</exception>
    public static Dose FromPercent(double value) => new(Guard.AtLeast(value, 0));

    /// <summary>No thickener.</summary>
    public static Dose None => default;

    /// <summary>Orders by size.</summary>
    public int CompareTo(Dose other) => Percent.CompareTo(other.Percent);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(Dose left, Dose right) => left.Percent < right.Percent;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(Dose left, Dose right) => left.Percent > right.Percent;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(Dose left, Dose right) => left.Percent <= right.Percent;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(Dose left, Dose right) => left.Percent >= right.Percent;
}
