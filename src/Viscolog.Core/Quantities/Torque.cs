namespace Viscolog.Core.Quantities;

/// <summary>A torque.</summary>
public readonly record struct Torque : IComparable<Torque>
{
    private Torque(double value) => NewtonMeters = value;

    /// <summary>The value in N·m.</summary>
    public double NewtonMeters { get; }

    /// <summary>Makes one from N·m.</summary>
    /// <param name="value">In N·m; above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or out of range.</exception>
    public static Torque FromNewtonMeters(double value) => new(Guard.Positive(value));

    /// <summary>Orders by size.</summary>
    public int CompareTo(Torque other) => NewtonMeters.CompareTo(other.NewtonMeters);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(Torque left, Torque right) => left.NewtonMeters < right.NewtonMeters;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(Torque left, Torque right) => left.NewtonMeters > right.NewtonMeters;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(Torque left, Torque right) => left.NewtonMeters <= right.NewtonMeters;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(Torque left, Torque right) => left.NewtonMeters >= right.NewtonMeters;
}
