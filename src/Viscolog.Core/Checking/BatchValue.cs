using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>
/// A batch's body: the mean of its readings at the reference temperature, taken on the ln scale, on which readings scatter evenly and
/// every part of the uncertainty is a relative one. The parts are independent and add up as squares (JCGM 100:2008, 5.1.2).
/// </summary>
/// <param name="Body">The geometric mean, a known bias of the method taken out.</param>
/// <param name="Readings">Readings that count.</param>
/// <param name="Parts">What its uncertainty is made of.</param>
public sealed record BatchValue(Viscosity Body, int Readings, ImmutableArray<UncertaintyPart> Parts)
{
    /// <summary>Relative standard uncertainty (k = 1).</summary>
    public Percentage Uncertainty => Percentage.FromFraction(Math.Sqrt(Parts.Sum(p => p.Size.Fraction * p.Size.Fraction)));

    /// <summary>Effective degrees of freedom of the uncertainty; above 0, infinite where every part is known.</summary>
    public double DegreesOfFreedom => Conformity.EffectiveFreedom([.. Parts.Select(p => (p.Size.Fraction, p.DegreesOfFreedom))]);

    /// <summary>So many standard uncertainties either side hold the true value 95 times in 100 (Student's t).</summary>
    public double Coverage => Conformity.Coverage(Percentage.FromPercent(95), DegreesOfFreedom);

    /// <summary>Standard uncertainty in the unit of the body (k = 1); first order, good for relative uncertainties up to about 20
    /// %.</summary>
    public Viscosity StandardUncertainty
        => Viscosity.FromMilliPascalSeconds(Math.Max(1e-12, Uncertainty.Fraction) * Body.MilliPascalSeconds);

    /// <summary>ln(read/true) that was taken out; 0 where no bias was told.</summary>
    public double LnBiasTakenOut { get; init; }

    /// <summary>The probability that the true body lies in a band.</summary>
    internal double Chance(ViscosityBand band)
        => Conformity.Chance(Body.Ln, Uncertainty.Fraction, band.Low.Ln, band.High.Ln, DegreesOfFreedom);

    /// <summary>The means that would be accepted at this uncertainty; null where none would.</summary>
    internal ViscosityBand? Accepted(ViscosityBand band)
        => Conformity.Acceptance(Uncertainty.Fraction, band.Low.Ln, band.High.Ln, DegreesOfFreedom) is var (low, high) && low < high
            ? ViscosityBand.Between(Viscosity.FromLn(low), Viscosity.FromLn(high)) : null;

    /// <summary>The value after further readings that leave the mean where it is and scatter as the ones before.</summary>
    /// <param name="more">How many; 0 or more.</param>
    internal BatchValue After(int more) => this with
    {
        Readings = Readings + more,
        Parts = [.. Parts.Select(p => p.ShrinksWithReadings ? p with
        {
            Size = Percentage.FromFraction(p.Size.Fraction * Math.Sqrt(Readings / (double)(Readings + more))),
            DegreesOfFreedom = p.DegreesOfFreedom + more,
        } : p)],
    };
}
