namespace Viscolog.Core.Quantities;

/// <summary>A kinematic viscosity: dynamic viscosity over density.</summary>
public readonly record struct KinematicViscosity : IComparable<KinematicViscosity>
{
    private KinematicViscosity(double value) => SquareMillimetersPerSecond = value;

    /// <summary>The value in mm²/s.</summary>
    public double SquareMillimetersPerSecond { get; }

    /// <summary>Makes one from mm²/s.</summary>
    /// <param name="value">In mm²/s; above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or out of range.</exception>
    public static KinematicViscosity FromSquareMillimetersPerSecond(double value) => new(Guard.Positive(value));

    /// <summary>Orders by size.</summary>
    public int CompareTo(KinematicViscosity other) => SquareMillimetersPerSecond.CompareTo(other.SquareMillimetersPerSecond);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(KinematicViscosity left, KinematicViscosity right)
        => left.SquareMillimetersPerSecond < right.SquareMillimetersPerSecond;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(KinematicViscosity left, KinematicViscosity right)
        => left.SquareMillimetersPerSecond > right.SquareMillimetersPerSecond;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(KinematicViscosity left, KinematicViscosity right)
        => left.SquareMillimetersPerSecond <= right.SquareMillimetersPerSecond;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(KinematicViscosity left, KinematicViscosity right)
        => left.SquareMillimetersPerSecond >= right.SquareMillimetersPerSecond;
}
