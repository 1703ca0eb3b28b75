using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Practice;

/// <summary>What hides in a practice pot, found out on a fine grid of its law; to be shown when the game is over.</summary>
/// <remarks>
/// Rules of the game, without a source: the curve counts as flat where a gram buys under a quarter of the most that any gram buys (the dose
/// limit's own rule); a pot weeps beyond 1.1 of the dose at its peak, or beyond the usual range where it has none; a dose beyond the peak
/// is over,
/// whatever it reads, and so is one beyond 1.6 of the usual range, where no curve was looked at.
/// </remarks>
public sealed class PotTruth
{
    /// <summary>Doses looked at, over the usual range's top.</summary>
    public const double Furthest = 1.6;

    private const int Grid = 320;

    /// <summary>A fall in ln units that counts as one.</summary>
    private const double RealFall = 0.01;

    private const double FlatPart = 0.25;
    private readonly HiddenPot _pot;
    private readonly double[] _lns;

    internal PotTruth(HiddenPot start, ViscosityBand band)
    {
        (_pot, Band) = (start, band);
        _lns = [.. Enumerable.Range(0, Grid + 1).Select(i => start.Law.LnBody(Furthest * i / Grid))];
        var highest = Array.IndexOf(_lns, _lns.Max());
        Peak = _lns[highest] - _lns[^1] > RealFall ? At(highest) : null;
        FlatFrom = Flattening(Peak is null ? Grid / Furthest : highest);
        Needed = First(band.Aim.Ln) ?? _pot.RangeTop;
        InBandFrom = First(band.Low.Ln) ?? Needed;
        OverFrom = First(band.High.Ln) ?? Peak;
        WeepsFrom = Peak is { } peak ? Dose.FromPercent(1.1 * peak.Percent) : _pot.RangeTop;
    }

    /// <summary>The family of the law, in a word.</summary>
    public string Family => _pot.Law.Family;

    /// <summary>τ of the build-up.</summary>
    public TimeSpan TimeConstant => _pot.TimeConstant;

    /// <summary>The band aimed at.</summary>
    public ViscosityBand Band { get; }

    /// <summary>The dose that the aim needs.</summary>
    public Dose Needed { get; }

    /// <summary>The dose from which on the pot is in band.</summary>
    public Dose InBandFrom { get; }

    /// <summary>The dose from which on the pot is over; null where none looked at is.</summary>
    public Dose? OverFrom { get; }

    /// <summary>The dose from which on a gram buys under a quarter of the most that any gram buys; null where that is nowhere.</summary>
    public Dose? FlatFrom { get; }

    /// <summary>The dose of the greatest body; null where the body rises throughout.</summary>
    public Dose? Peak { get; }

    /// <summary>The dose from which on the pot weeps.</summary>
    public Dose WeepsFrom { get; }

    /// <summary>Top of the usual range.</summary>
    public Dose RangeTop => _pot.RangeTop;

    /// <summary>Base in the pot at first.</summary>
    public Mass Base => _pot.Base;

    /// <summary>The settled body at a dose.</summary>
    public Viscosity BodyAt(Dose dose) => Viscosity.FromLn(_pot.Law.LnBody(dose.Percent / _pot.RangeTop.Percent));

    /// <summary>Whether a dose is over: its body is above the band, or it lies beyond the peak or beyond what was looked at.</summary>
    public bool IsOver(Dose dose) => BodyAt(dose) > Band.High || dose > Peak || dose.Percent > Furthest * RangeTop.Percent;

    /// <summary>By how much a gram raises the body of the pot as it was at first, in % of it; below 0 beyond a peak.</summary>
    /// <param name="dose">The dose half a gram before and after which the two bodies are taken; of a smaller one, the first gram.</param>
    public double PercentForGramAt(Dose dose)
    {
        var gram = 100 / _pot.Base.Grams / _pot.RangeTop.Percent;
        var after = Math.Max(gram, (dose.Percent / _pot.RangeTop.Percent) + (gram / 2));
        return 100 * (Math.Exp(_pot.Law.LnBody(after) - _pot.Law.LnBody(after - gram)) - 1);
    }

    /// <summary>The dose where a gram raises the body most in proportion, within the usual range.</summary>
    public Dose Steepest()
        => Enumerable.Range(1, (int)(Grid / Furthest)).Select(i => At(i)).MaxBy(PercentForGramAt);

    /// <summary>The law, sampled from no thickener to a dose.</summary>
    /// <param name="end">The last dose.</param>
    /// <param name="samples">How many, at least 2.</param>
    public ImmutableArray<(Dose Dose, Viscosity Body)> Samples(Dose end, int samples)
        => [.. Enumerable.Range(0, samples).Select(i => Dose.FromPercent(end.Percent * i / (samples - 1))).Select(d => (d, BodyAt(d)))];

    private Dose At(double place) => Dose.FromPercent(Furthest * place / Grid * _pot.RangeTop.Percent);

    /// <summary>The dose that first brings the body up to a value.</summary>
    private Dose? First(double ln)
    {
        for (var i = 0; i <= Grid; i++)
        {
            if (_lns[i] >= ln)
            {
                return i == 0 ? Dose.None : At(i - 1 + ((ln - _lns[i - 1]) / (_lns[i] - _lns[i - 1])));
            }
        }

        return null;
    }

    private Dose? Flattening(double end)
    {
        var last = (int)end;
        var slopes = Enumerable.Range(0, last).Select(i => _lns[i + 1] - _lns[i]).ToArray();
        var bound = FlatPart * slopes.Max();
        var steep = Array.FindLastIndex(slopes, s => s >= bound);
        return steep + 1 < last ? At(steep + 1) : null;
    }
}
