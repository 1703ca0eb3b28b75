namespace Viscolog.Core.Quantities;

/// <summary>A dynamic viscosity as a method reads it.</summary>
public readonly record struct Viscosity : IComparable<Viscosity>
{
    private Viscosity(double value) => MilliPascalSeconds = value;

    /// <summary>The value in mPa·s.</summary>
    public double MilliPascalSeconds { get; }

    /// <summary>Makes one from mPa·s.</summary>
    /// <param name="value">In mPa·s; above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or out of range.</exception>
    public static Viscosity FromMilliPascalSeconds(double value) => new(Guard.Positive(value));

    /// <summary>The natural logarithm of the value in mPa·s; the scale on which readings scatter evenly.</summary>
    public double Ln => Math.Log(MilliPascalSeconds);

    /// <summary>Makes one from the natural logarithm of its value in mPa·s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The result is not finite or not above 0.</exception>
    public static Viscosity FromLn(double ln) => FromMilliPascalSeconds(Math.Exp(ln));

    /// <summary>Orders by size.</summary>
    public int CompareTo(Viscosity other) => MilliPascalSeconds.CompareTo(other.MilliPascalSeconds);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(Viscosity left, Viscosity right) => left.MilliPascalSeconds < right.MilliPascalSeconds;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(Viscosity left, Viscosity right) => left.MilliPascalSeconds > right.MilliPascalSeconds;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(Viscosity left, Viscosity right) => left.MilliPascalSeconds <= right.MilliPascalSeconds;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(Viscosity left, Viscosity right) => left.MilliPascalSeconds >= right.MilliPascalSeconds;
}
