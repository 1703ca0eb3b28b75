using System.Runtime.InteropServices;

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

/// <summary>The doses in a pot.</summary>
/// <param name="Body">Of the thickener that makes the body.</param>
/// <param name="Strings">Of the thickener that brings the string; none where there is one thickener.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Doses(Dose Body, Dose Strings)
{
    /// <summary>The dose of a pot with one thickener.</summary>
    public static implicit operator Doses(Dose body) => new(body, Dose.None);

    /// <summary>Makes a pair from g per 100 g of base (%).</summary>
    /// <param name="body">Dose of the thickener that makes the body; 0 or more.</param>
    /// <param name="strings">Dose of the thickener that brings the string; 0 or more.</param>
    public static Doses FromPercent(double body, double strings) => new(Dose.FromPercent(body), Dose.FromPercent(strings));
}

/// <summary>What is read of a pot and wanted in a band.</summary>
public enum Quantity
{
    /// <summary>The settled body.</summary>
    Body,

    /// <summary>How far a lifted stick draws a string.</summary>
    Stringiness,
}

/// <summary>A dose that is not known exactly.</summary>
/// <param name="Median">As likely to be more as less.</param>
/// <param name="Low">The interval's low end.</param>
/// <param name="High">The interval's high end; null where it lies beyond anything considered.</param>
/// <param name="Level">The chance that the interval holds the dose.</param>
public sealed record DoseEstimate(Dose Median, Dose Low, Dose? High, Percentage Level);

/// <summary>A supplier's usual range of doses.</summary>
/// <param name="Low">The least usual dose.</param>
/// <param name="Top">The greatest usual dose; above the least.</param>
public sealed record DoseRange(Dose Low, Dose Top)
{
    /// <summary>1 to 5 %, used where a run states none (common practice, no source).</summary>
    public static DoseRange Common { get; } = new(Dose.FromPercent(1), Dose.FromPercent(5));

    /// <summary>
    /// The active matter of the thickeners that <see cref="Common"/> is about (emulsions as supplied; common practice, no source).
    /// </summary>
    public static Percentage CommonActive { get; } = Percentage.FromPercent(30);

    /// <summary>The range assumed where none is stated: as much active matter as in <see cref="Common"/>, at most 20 to 100 %.</summary>
    /// <param name="active">Active matter; null for that of <see cref="Common"/>.</param>
    public static DoseRange Assumed(Percentage? active)
    {
        if (active is not { Fraction: > 0 } part)
        {
            return Common;
        }

        var factor = Math.Min(CommonActive.Fraction / part.Fraction, 100 / Common.Top.Percent);
        return new(
            Dose.FromPercent(Math.Round(Common.Low.Percent * factor, 6)), Dose.FromPercent(Math.Round(Common.Top.Percent * factor, 6)));
    }

    /// <summary>The greatest usual dose; above the least.</summary>
    public Dose Top { get; } = Top > Low
        ? Top
        : throw new ArgumentOutOfRangeException(nameof(Top), Top.Percent, "must be above the least dose");
}

/// <summary>Doses by quantity.</summary>
internal static class DosesByQuantity
{
    /// <summary>The dose of a quantity's thickener, in %.</summary>
    public static double Of(this Doses doses, Quantity quantity) => (quantity == Quantity.Body ? doses.Body : doses.Strings).Percent;

    /// <summary>The doses with another one of a quantity's thickener, in %.</summary>
    public static Doses With(this Doses doses, Quantity quantity, double percent)
        => quantity == Quantity.Body ? doses with { Body = Dose.FromPercent(percent) } : doses with { Strings = Dose.FromPercent(percent) };
}
