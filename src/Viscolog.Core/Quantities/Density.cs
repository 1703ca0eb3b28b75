namespace Viscolog.Core.Quantities;

/// <summary>A mass density.</summary>
public readonly record struct Density : IComparable<Density>
{
    private Density(double value) => GramsPerMilliliter = value;

    /// <summary>That of water at 20 °C: 0.998 g/mL (from memory).</summary>
    public static Density Water { get; } = FromGramsPerMilliliter(0.998);

    /// <summary>The value in g/mL.</summary>
    public double GramsPerMilliliter { get; }

    /// <summary>Makes one from g/mL.</summary>
    /// <param name="value">In g/mL; above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or out of range.</exception>
    public static Density FromGramsPerMilliliter(double value) => new(Guard.Positive(value));

    /// <summary>Orders by size.</summary>
    public int CompareTo(Density other) => GramsPerMilliliter.CompareTo(other.GramsPerMilliliter);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(Density left, Density right) => left.GramsPerMilliliter < right.GramsPerMilliliter;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(Density left, Density right) => left.GramsPerMilliliter > right.GramsPerMilliliter;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(Density left, Density right) => left.GramsPerMilliliter <= right.GramsPerMilliliter;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(Density left, Density right) => left.GramsPerMilliliter >= right.GramsPerMilliliter;
}
