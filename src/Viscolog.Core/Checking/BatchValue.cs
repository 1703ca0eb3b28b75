using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>
/// A batch's body: the mean of its readings at the reference temperature, taken on the ln scale, on which readings scatter evenly and
/// every part of the
/// uncertainty is a relative one. The parts are independent and add up as squares (JCGM 100:2008, 5.1.2).
/// </summary>
/// <param name="Body">The geometric mean, a known bias of the method taken out.</param>
/// <param name="Readings">Readings that count.</param>
/// <param name="Parts">What its uncertainty is made of.</param>
public sealed record BatchValue(Viscosity Body, int Readings, ImmutableArray<UncertaintyPart> Parts)
{
    /// <summary>Relative standard uncertainty (k = 1).</summary>
    public Percentage Uncertainty => Percentage.FromFraction(Math.Sqrt(Variance(shrinking: true) + Variance(shrinking: false)));

    /// <summary>Standard uncertainty in the unit of the body (k = 1); first order, good for relative uncertainties up to about 20
    /// %.</summary>
    public Viscosity StandardUncertainty
        => Viscosity.FromMilliPascalSeconds(Math.Max(1e-12, Uncertainty.Fraction) * Body.MilliPascalSeconds);

    /// <summary>ln(read/true) that was taken out; 0 where no bias was told.</summary>
    public double LnBiasTakenOut { get; init; }

    /// <summary>Variance of the ln of the parts that shrink with readings, or of those that all readings share.</summary>
    internal double Variance(bool shrinking)
        => Parts.Where(p => p.ShrinksWithReadings == shrinking).Sum(p => p.Size.Fraction * p.Size.Fraction);
}

/// <summary>One part of the uncertainty of a batch's value.</summary>
/// <param name="Name">What it comes from, in a word or two.</param>
/// <param name="Size">Relative standard uncertainty.</param>
/// <param name="ShrinksWithReadings">Whether more readings make it smaller.</param>
/// <param name="Words">How it was worked out.</param>
/// <param name="Remedy">What makes it smaller.</param>
public sealed record UncertaintyPart(string Name, Percentage Size, bool ShrinksWithReadings, string Words, string Remedy);
