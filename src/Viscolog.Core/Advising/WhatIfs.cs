using Viscolog.Core.Inference;
using Viscolog.Core.Limits;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Judges an addition that somebody asks about, by the same posterior as the advice.</summary>
internal static class WhatIfs
{
    /// <summary>Judges it.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="poured">The addition.</param>
    /// <param name="band">The band aimed at.</param>
    /// <param name="posterior">The posterior.</param>
    /// <param name="limit">The dose limit.</param>
    public static WhatIf Of(StudyRequest request, Mass poured, ViscosityBand band, Posterior posterior, DoseLimit limit)
    {
        var thickener = posterior.Evidence.Thickener;
        var pot = request.Run.PotNow();
        var (now, after) = (pot.DoseOf(thickener.Name), DoseAfter(request.Run, thickener, poured));
        var expected = posterior.At(after);
        return new(
            poured,
            Dose.FromPercent(after.Percent - now.Percent),
            after,
            expected.ToEstimate(Study.Level),
            Chance(expected.ChanceWithin(band.Low.Ln, band.High.Ln)),
            Chance(expected.ChanceAbove(band.High.Ln)),
            request.Risk)
        {
            BeyondLimit = after > limit.Dose ? limit : null,
            MostAtOnce = MostAtOnce(after.Percent - now.Percent, after, posterior),
        };
    }

    /// <summary>The dose that an addition leads to.</summary>
    public static Dose DoseAfter(Run run, Thickener thickener, Mass poured) => run.PotNow().Add(thickener, poured).DoseOf(thickener.Name);

    /// <summary>What advice pours at most at once, over the usual range; null where the addition is no more.</summary>
    private static Percentage? MostAtOnce(double increment, Dose after, Posterior posterior)
    {
        var now = after.Percent - increment;
        var most = IncrementPolicy.Cap(posterior, now, posterior.Evidence.RangeTop) - now;
        return increment > most + 1e-9 ? Percentage.FromFraction(most / posterior.Evidence.RangeTop) : null;
    }

    private static Percentage Chance(double fraction) => Percentage.FromFraction(Math.Clamp(fraction, 0, 1));
}

/// <summary>What to expect of an addition that somebody asks about, advised or not.</summary>
/// <param name="Poured">Grams to pour, dilution water included.</param>
/// <param name="Increment">The thickener in it, over the base now in the pot.</param>
/// <param name="After">The dose after it.</param>
/// <param name="Expected">The settled body expected.</param>
/// <param name="ChanceInBand">Chance that it ends in band.</param>
/// <param name="ChanceOver">Chance that it ends over the band.</param>
/// <param name="Risk">The chance of going over that advice keeps to.</param>
public sealed record WhatIf(
    Mass Poured, Dose Increment, Dose After, Estimate Expected, Percentage ChanceInBand, Percentage ChanceOver, Percentage Risk)
{
    /// <summary>The dose limit where the addition goes beyond it; else null.</summary>
    public DoseLimit? BeyondLimit { get; init; }

    /// <summary>The largest single step over the usual range where the addition is more; else null.</summary>
    public Percentage? MostAtOnce { get; init; }
}
