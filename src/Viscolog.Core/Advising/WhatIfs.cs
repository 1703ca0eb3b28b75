using System.Collections.Immutable;
using Viscolog.Core.Inference;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Judges an addition that somebody asks about, by the same posterior as the advice.</summary>
internal static class WhatIfs
{
    /// <summary>Beyond so many times the usual range there is no forecast.</summary>
    public const double Furthest = 1.5;

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
        var over = Chance(expected.ChanceAbove(band.High.Ln));
        return new(
            poured,
            Dose.FromPercent(after.Percent - now.Percent),
            after,
            expected.ToEstimate(Study.Level),
            Chance(expected.ChanceWithin(band.Low.Ln, band.High.Ln)),
            over,
            [.. Notes(request.Risk, over, after.Percent - now.Percent, after, posterior, limit)]);
    }

    /// <summary>The dose that an addition leads to.</summary>
    public static Dose DoseAfter(Run run, Thickener thickener, Mass poured) => run.PotNow().Add(thickener, poured).DoseOf(thickener.Name);

    private static IEnumerable<string> Notes(Percentage risk, Percentage over, double increment, Dose after, Posterior posterior, DoseLimit limit)
    {
        yield return over > risk
            ? FormattableString.Invariant($"The chance of over is {Explanation.OneIn(over)}, more than the {Explanation.OneIn(risk)} that advice keeps to.")
            : FormattableString.Invariant($"The chance of over stays within the {Explanation.OneIn(risk)} that advice keeps to.");
        if (after > limit.Dose)
        {
            yield return $"It goes beyond the dose limit: {limit.Why}.";
        }

        var now = after.Percent - increment;
        var most = IncrementPolicy.Cap(posterior, now, posterior.Evidence.RangeTop) - now;
        if (increment > most + 1e-9)
        {
            yield return FormattableString.Invariant($"It is more than advice pours at once ({100 * most / posterior.Evidence.RangeTop:0} % of the usual range).");
        }
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
/// <param name="Notes">In words: whether the risk, the dose limit and the largest single step are kept.</param>
public sealed record WhatIf(
    Mass Poured, Dose Increment, Dose After, Estimate Expected, Percentage ChanceInBand, Percentage ChanceOver, ImmutableArray<string> Notes);
