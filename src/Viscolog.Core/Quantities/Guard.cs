using System.Runtime.CompilerServices;

namespace Viscolog.Core.Quantities;

/// <summary>Checks arguments at Core's border; a failure is a programmer's mistake, so it throws.</summary>
internal static class Guard
{
    /// <summary>Returns <paramref name="value"/> when it is finite and not below <paramref name="least"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or is below the least allowed.</exception>
    public static double AtLeast(double value, double least, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!double.IsFinite(value) || value < least)
        {
            throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"must be finite and at least {least}"));
        }

        return value;
    }

    /// <summary>Returns <paramref name="value"/> when it is finite and above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or not above zero.</exception>
    public static double Positive(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!double.IsFinite(value) || value <= 0)
        {
            throw new ArgumentOutOfRangeException(name, value, "must be finite and above zero");
        }

        return value;
    }

    /// <summary>Returns <paramref name="value"/> when it is not below <paramref name="least"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is below the least allowed.</exception>
    public static int CountAtLeast(int value, int least, [CallerArgumentExpression(nameof(value))] string name = "")
        => value >= least
            ? value
            : throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"must be at least {least}"));

    /// <summary>Returns <paramref name="text"/> when it says something.</summary>
    /// <exception cref="ArgumentException">The text is missing or blank.</exception>
    public static string NotBlank(string? text, [CallerArgumentExpression(nameof(text))] string name = "")
        => string.IsNullOrWhiteSpace(text) ? throw new ArgumentException("must not be blank", name) : text;

    /// <summary>Returns <paramref name="value"/> when it lies between the two bounds, both included.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or lies outside the bounds.</exception>
    public static double Between(double value, double least, double most, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!double.IsFinite(value) || value < least || value > most)
        {
            throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"must lie between {least} and {most}"));
        }

        return value;
    }
}
