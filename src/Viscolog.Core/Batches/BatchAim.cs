using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Limits;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Batches;

/// <summary>Finds the final dose of a batch.</summary>
internal static class BatchAim
{
    /// <summary>Chance of being in band from which on the run's own dose is the one to repeat.</summary>
    private const double LikelyInBand = 0.5;

    /// <summary>The final dose and where it comes from; or why there is none.</summary>
    /// <param name="posterior">What the run says.</param>
    /// <param name="band">The band aimed at.</param>
    /// <param name="stated">Whether somebody stated that band.</param>
    public static (Dose Dose, BatchSource? Source, BatchRefusal? Refusal) Of(Posterior posterior, ViscosityBand band, bool stated)
    {
        var name = posterior.Evidence.Thickener.Name;
        var reached = posterior.Evidence.Run.PotNow().DoseOf(name);
        var now = posterior.At(reached);
        if (!stated || now.ChanceWithin(band.Low.Ln, band.High.Ln) >= LikelyInBand)
        {
            return reached == Dose.None
                ? (reached, null, new BatchRefusal.NoneInPot(name)) : (reached, new BatchSource.EndOfRun(reached, name, stated), null);
        }

        var limit = DoseLimits.Of(posterior, band);
        var isOver = now.ChanceAbove(band.High.Ln) > 0.5;
        return posterior.DoseFor(band.Aim, Study.Level) is { } named && named.Median <= limit.Dose && named.Median > Dose.None
            ? (named.Median, new BatchSource.CurveOfRun(isOver, reached, name, named), null)
            : (Dose.None, null, new BatchRefusal.NoDoseForTarget(isOver, name, limit));
    }
}
