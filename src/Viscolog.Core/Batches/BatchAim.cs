using System.Globalization;
using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Batches;

/// <summary>The final dose of a batch and where it comes from; or why there is none.</summary>
/// <param name="Dose">The final dose; null where there is none.</param>
/// <param name="Words">Where it comes from, a sentence; or why there is none, and what to do.</param>
internal sealed record BatchAim(Dose? Dose, string Words)
{
    /// <summary>Chance of being in band from which on the run's own dose is the one to repeat.</summary>
    private const double LikelyInBand = 0.5;

    /// <summary>Finds it.</summary>
    /// <param name="posterior">What the run says.</param>
    /// <param name="band">The band aimed at.</param>
    /// <param name="stated">Whether somebody stated that band.</param>
    public static BatchAim Of(Posterior posterior, ViscosityBand band, bool stated)
    {
        var name = posterior.Evidence.Thickener.Name;
        var reached = posterior.Evidence.Run.PotNow().DoseOf(name);
        var now = posterior.At(reached);
        if (!stated || now.ChanceWithin(band.Low.Ln, band.High.Ln) >= LikelyInBand)
        {
            return new(reached, string.Create(CultureInfo.InvariantCulture, $"The run ended at {reached.Percent:0.00} % {name}, and the "
                + $"batch goes there too.")
                + (stated ? "" : " The run states no target, so what it reads at that dose, give or take 15 %, is aimed at."));
        }

        var limit = DoseLimits.Of(posterior, band);
        var where = now.ChanceAbove(band.High.Ln) > 0.5 ? "over" : "short of the band";
        if (posterior.DoseFor(band.Aim, Study.Level) is { } wanted && wanted.Median <= limit.Dose && wanted.Median > Quantities.Dose.None)
        {
            var high = wanted.High is { } end ? FormattableString.Invariant($"{end.Percent:0.00} %") : "more than was read";
            return new(wanted.Median, string.Create(CultureInfo.InvariantCulture,
                $"The run itself ended {where}, at {reached.Percent:0.00} % {name}. The batch goes to {wanted.Median.Percent:0.00} %, "
                    + $"where its curve meets the target ({wanted.Low.Percent:0.00} % to {high}, 9 times in 10): carry the run to its "
                    + $"target first if you can."));
        }

        return new(null, string.Create(CultureInfo.InvariantCulture,
            $"the run ended {where}, and its curve names no dose of '{name}' for the target within the dose limit of "
                + $"{limit.Dose.Percent:0.##} % ({limit.Why}): carry the run to its target first, or state another with --target"));
    }
}
