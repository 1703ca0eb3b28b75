namespace Viscolog.Core.Quantities;

/// <summary>A temperature.</summary>
public readonly record struct Temperature : IComparable<Temperature>
{
    private Temperature(double value) => Celsius = value;

    /// <summary>The value in °C.</summary>
    public double Celsius { get; }

    /// <summary>Makes one from °C.</summary>
    /// <param name="value">In °C; not below absolute zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or out of range.</exception>
    public static Temperature FromCelsius(double value) => new(Guard.AtLeast(value, AbsoluteZero));

    /// <summary>Absolute zero in °C (BIPM, The International System of Units, 9th edition: 0 °C = 273.15 K).</summary>
    private const double AbsoluteZero = -273.15;

    /// <summary>The value in kelvin.</summary>
    public double Kelvin => Celsius - AbsoluteZero;

    /// <summary>Orders by size.</summary>
    public int CompareTo(Temperature other) => Celsius.CompareTo(other.Celsius);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(Temperature left, Temperature right) => left.Celsius < right.Celsius;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(Temperature left, Temperature right) => left.Celsius > right.Celsius;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(Temperature left, Temperature right) => left.Celsius <= right.Celsius;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(Temperature left, Temperature right) => left.Celsius >= right.Celsius;
}
