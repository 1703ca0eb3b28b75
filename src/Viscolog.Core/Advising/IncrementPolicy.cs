using Viscolog.Core.Inference;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>
/// Chooses the next dose: escalation with overdose control (Babb, Rogatko and Zacks, Statistics in Medicine 17 (1998) 1103–1120, there for
/// drug doses). Among the doses whose chance of going over stays within the risk, the one with the greatest chance of landing in band if
/// that
/// chance is worth it, else the largest.
/// </summary>
public static class IncrementPolicy
{
    /// <summary>The greatest chance of going over that an addition may carry unless the user says otherwise.</summary>
    public static readonly Percentage DefaultRisk = Percentage.FromPercent(4.5);

    /// <summary>The largest single increment, over the top of the usual range (common practice, no source).</summary>
    public const double StepCap = 0.3;

    /// <summary>The same over doses that an earlier run has read: no ground is unknown there.</summary>
    public const double KnownStepCap = 0.6;

    /// <summary>
    /// While nothing but the base was read no dose goes beyond this part of the low end of the usual range: a hundred-fold rise within a
    /// tenth of the range is real (gums, gelling particles), and a start at or under the low end is what careful people do (common
    /// practice, no source).
    /// </summary>
    public const double FirstDose = 0.7;

    /// <summary>Chance of being in band from which on it is time to stop.</summary>
    public const double StopChance = 0.9;

    /// <summary>A chance in band that is worth aiming at; below it the aim is to learn the most that the risk allows.</summary>
    public const double WorthAiming = 0.55;

    private const int Candidates = 40;
    private const int Tries = 25;

    /// <summary>Chooses.</summary>
    /// <param name="posterior">The posterior.</param>
    /// <param name="band">The band aimed at.</param>
    /// <param name="now">The dose now, in %.</param>
    /// <param name="limit">The dose not to be passed, in %.</param>
    /// <param name="rangeTop">Top of the usual range, in %.</param>
    /// <param name="risk">The greatest chance of going over, as a fraction.</param>
    /// <returns>Null where no addition keeps within the risk.</returns>
    internal static Choice? Choose(Posterior posterior, ViscosityBand band, double now, double limit, double rangeTop, double risk)
    {
        var cap = Cap(posterior, now, rangeTop);
        var most = Math.Min(cap, limit);
        if (posterior.Evidence.ReadUpTo <= 0 && posterior.Prior.Runs == 0)
        {
            most = Math.Min(most, Math.Max(now, FirstDose * posterior.Evidence.Thickener.UsualRange.Low.Percent));
        }

        if (most <= now)
        {
            return null;
        }

        // A fixed step of the bench scale hides in the rounding later; here doses are spread evenly up to what is allowed.
        var ceiling = Ceiling(posterior, band, now, most, risk);
        if (ceiling <= now)
        {
            return null;
        }

        var (best, bestChance) = (ceiling, -1.0);
        for (var i = 1; i <= Tries; i++)
        {
            var dose = now + ((ceiling - now) * i / Tries);
            var chance = posterior.At(Dose.FromPercent(dose)).ChanceWithin(band.Low.Ln, band.High.Ln);
            if (chance > bestChance + 1e-9)
            {
                (best, bestChance) = (dose, chance);
            }
        }

        if (bestChance >= WorthAiming && best < ceiling)
        {
            return new(best, bestChance, ChoiceBound.BestChance);
        }

        var bound = ceiling < most ? ChoiceBound.BodyRisk : limit <= cap ? ChoiceBound.Limit : ChoiceBound.StepCap;
        return new(ceiling, bestChance, bound);
    }

    /// <summary>The dose in % beyond which no single increment goes.</summary>
    internal static double Cap(Posterior posterior, double now, double rangeTop)
        => Math.Max(now + (StepCap * rangeTop), Math.Min(posterior.Prior.ReadUpTo, now + (KnownStepCap * rangeTop)));

    /// <summary>The largest dose up to which every dose on the way keeps within the risk.</summary>
    private static double Ceiling(Posterior posterior, ViscosityBand band, double now, double most, double risk)
        => Threshold.Of(now, most, dose => posterior.At(Dose.FromPercent(dose)).ChanceAbove(band.High.Ln) > risk, Candidates, 7).Before;
}

/// <summary>The dose that the policy chose.</summary>
/// <param name="DosePercent">The dose to go to, in %.</param>
/// <param name="BestChance">The greatest chance in band among the doses allowed, as a fraction.</param>
/// <param name="Bound">What kept it from being larger.</param>
internal sealed record Choice(double DosePercent, double BestChance, ChoiceBound Bound);

/// <summary>What kept a chosen addition from being larger.</summary>
public enum ChoiceBound
{
    /// <summary>More would be less likely to land in band.</summary>
    BestChance,

    /// <summary>More would carry too great a chance that the body goes over.</summary>
    BodyRisk,

    /// <summary>More would carry too great a chance that the string goes over.</summary>
    StringRisk,

    /// <summary>More would leave no room for what the other thickener will still do.</summary>
    Room,

    /// <summary>The largest single increment.</summary>
    StepCap,

    /// <summary>The dose limit.</summary>
    Limit,
}
