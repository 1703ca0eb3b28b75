using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Limits;

/// <summary>Finds the dose beyond which more is wrong: the least of several limits, with its reason.</summary>
internal static class DoseLimits
{
    /// <summary>Chance of coming up to the band below which a target counts as out of reach.</summary>
    public const double HopelessChance = 0.1;

    private const int Grid = 50;

    /// <summary>More is no use where the curve's slope is under this part of its greatest (common practice, no source).</summary>
    private const double FlatPart = 0.25;

    /// <summary>Weight from which on a rise-and-fall shape is taken seriously.</summary>
    private const double PeakWeight = 0.2;

    /// <summary>Doses of thickener that have to be read before a curve is said to flatten.</summary>
    private const int LeastDoses = 2;

    /// <summary>Finds the limit.</summary>
    /// <param name="posterior">The posterior.</param>
    /// <param name="band">The band aimed at; null for none. A flattening is no limit while it may only be a stretch on the way to the
    /// band.</param>
    public static DoseLimit Of(Posterior posterior, ViscosityBand? band)
    {
        var top = posterior.Evidence.Thickener.UsualRange.Top.Percent;
        var medians = new double[Grid + 1];
        for (var i = 0; i <= Grid; i++)
        {
            medians[i] = posterior.At(Dose.FromPercent(top * i / Grid)).Quantile(0.5);
        }

        var limit = UsualRange(posterior.Evidence.Thickener.UsualRange.Top);

        // Beyond the usual range that is what there is to say.
        if (posterior.Evidence.Steps[^1].Dose < top)
        {
            var flattening = IsShown(posterior.Evidence, Flattening(medians, top));
            limit = flattening is null || IsOnTheWay(posterior, band, flattening) ? limit : Least(limit, flattening);
            limit = Least(limit, Peak(posterior, top));
        }

        limit = Least(limit, Fault(posterior.Evidence.Run, posterior.Evidence.Thickener, true));
        return Least(limit, Stiffness(medians, top, posterior.Evidence.Run.TooStiff));
    }

    /// <summary>Finds the limit of one of two thickeners, the other staying where it is.</summary>
    /// <param name="posterior">The posterior.</param>
    /// <param name="quantity">The quantity whose thickener it is.</param>
    /// <param name="now">The doses now.</param>
    public static DoseLimit Of(Posterior posterior, Quantity quantity, Doses now)
    {
        const int grid = 20;
        var (evidence, from) = (posterior.Evidence, now.Of(quantity));
        var thickener = quantity == Quantity.Body ? evidence.Thickener : evidence.StringThickener!;

        // Strings are wanted here.
        var limit = Fault(evidence.Run, thickener, false) is { } fault
            && fault.Dose <= thickener.UsualRange.Top ? fault : UsualRange(thickener.UsualRange.Top);
        if (evidence.Run.TooStiff is not { } stiff || limit.Dose.Percent <= from)
        {
            return limit;
        }

        double At(int place) => from + ((limit.Dose.Percent - from) * place / grid);
        var first = Enumerable.Range(1, grid).FirstOrDefault(i => posterior.At(now.With(quantity, At(i))).Quantile(0.5) > stiff.Ln);
        return first == 0 ? limit : TooStiff(At(first - 1));
    }

    private static DoseLimit UsualRange(Dose top) => new(top, new LimitReason.UsualRange());

    private static DoseLimit TooStiff(double dose) => new(Dose.FromPercent(dose), new LimitReason.TooStiff());

    private static DoseLimit Least(DoseLimit left, DoseLimit? right) => right is not null && right.Dose < left.Dose ? right : left;

    private static bool IsOnTheWay(Posterior posterior, ViscosityBand? band, DoseLimit flattening)
    {
        if (band is null || posterior.At(flattening.Dose).ChanceAbove(band.Low.Ln) > 0.5)
        {
            return false;
        }

        return posterior.ChanceOfReaching(band.Low, posterior.Evidence.Thickener.UsualRange.Top).Fraction > HopelessChance;
    }

    /// <summary>A flattening that the readings show: three doses or more were read, one of them where it begins or beyond.</summary>
    private static DoseLimit? IsShown(Evidence evidence, DoseLimit? flattening)
        => flattening is not null && evidence.ReadUpTo >= flattening.Dose.Percent
            && evidence.Steps.Where(s => s.Readings.Length > 0).Select(s => s.Dose).Distinct().Count() > LeastDoses ? flattening : null;

    private static DoseLimit? Flattening(double[] medians, double top)
    {
        var greatest = 0.0;
        var lastSteep = 0;
        for (var i = 0; i < Grid; i++)
        {
            greatest = Math.Max(greatest, medians[i + 1] - medians[i]);
        }

        for (var i = 0; i < Grid; i++)
        {
            lastSteep = medians[i + 1] - medians[i] >= FlatPart * greatest ? i + 1 : lastSteep;
        }

        if (lastSteep >= Grid || lastSteep == 0)
        {
            return null;
        }

        return new(Dose.FromPercent(top * lastSteep / Grid), new LimitReason.Flattens());
    }

    private static DoseLimit? Peak(Posterior posterior, double top)
    {
        return posterior.PeakDose(PeakWeight) is { } peak && peak.Percent < top
            ? new(peak, new LimitReason.MayPeak())
            : null;
    }

    /// <summary>Whether the last reading saw lumps for the first time since the pot was changed: stirring may take them out.</summary>
    public static bool HasFreshLumps(Run run)
        => Steps.Of(run)[^1].Readings is [.., { Reading.Fault: ObservedFault.Lumps }] readings
            && readings.Count(r => r.Reading.Fault == ObservedFault.Lumps) == 1;

    /// <summary>Lumps count once they were seen twice in a step, the last time included: stirring did not take them out.</summary>
    private static bool Counts(Step step, PlacedReading placed)
        => placed.Reading.Fault is { } fault && (fault != ObservedFault.Lumps || (step.Readings[^1].Reading.Fault == fault
            && step.Readings.Count(r => r.Reading.Fault == fault) > 1));

    /// <summary>The least dose at which something was seen to be wrong; what is wrong without thickener is not the thickener's
    /// doing.</summary>
    /// <param name="run">The run.</param>
    /// <param name="thickener">Whose dose it is.</param>
    /// <param name="stringsAreFaults">Whether strings are a fault.</param>
    private static DoseLimit? Fault(Run run, Thickener thickener, bool stringsAreFaults)
    {
        var seen =
            from step in Steps.Of(run)
            let dose = step.Pot.DoseOf(thickener.Name)
            where dose > Dose.None
            from placed in step.Readings
            where Counts(step, placed) && (stringsAreFaults || placed.Reading.Fault != ObservedFault.Strings)
            select (Dose: dose, Fault: placed.Reading.Fault!.Value);
        return seen.OrderBy(s => s.Dose).Select(s => new DoseLimit(s.Dose, new LimitReason.Seen(s.Fault))).FirstOrDefault();
    }

    private static DoseLimit? Stiffness(double[] medians, double top, Viscosity? tooStiff)
    {
        if (tooStiff is not { } stiff)
        {
            return null;
        }

        var first = Array.FindIndex(medians, m => m > stiff.Ln);
        if (first < 0)
        {
            return null;
        }

        return TooStiff(top * Math.Max(0, first - 1) / Grid);
    }
}
