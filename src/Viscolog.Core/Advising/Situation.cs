using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Viscolog.Core.Inference;
using Viscolog.Core.Limits;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Where a pot stands, what of it is to come into its band, and what can be dosed for that.</summary>
internal sealed class Situation
{
    public Situation(StudyRequest request, ViscosityBand band, Posterior posterior)
    {
        (Request, Band, Posterior) = (request, band, posterior);
        Pot = request.Run.PotNow();
        Step = posterior.Evidence.Steps[^1];
        if (posterior.Evidence is { Thickener: var body, StringThickener: { } strings })
        {
            Thickeners = [body, strings];
            Now = DosesIn(Pot);
            Aims = [Advising.Aim.Of(band), Advising.Aim.Of(request.Run.TargetString!)];
            Limits = [DoseLimits.Of(posterior, Quantity.Body, Now), DoseLimits.Of(posterior, Quantity.Stringiness, Now)];
        }
        else
        {
            Thickeners = [posterior.Evidence.Thickener];
            Now = DosesIn(Pot);
            Aims = [Advising.Aim.Of(band)];
            Limits = [DoseLimits.Of(posterior, band)];
        }
    }

    public StudyRequest Request { get; }

    public Run Run => Request.Run;

    public ViscosityBand Band { get; }

    public Posterior Posterior { get; }

    public Evidence Evidence => Posterior.Evidence;

    public Pot Pot { get; }

    /// <summary>The step that the pot is in.</summary>
    public EvidenceStep Step { get; }

    /// <summary>The doses now.</summary>
    public Doses Now { get; }

    /// <summary>What is to come into its band; the place in it is that of the <see cref="Quantity"/>.</summary>
    public ImmutableArray<Aim> Aims { get; }

    /// <summary>What can be dosed, each in the place of the quantity that it is dosed for.</summary>
    public ImmutableArray<Thickener> Thickeners { get; }

    /// <summary>Their dose limits.</summary>
    public ImmutableArray<DoseLimit> Limits { get; }

    public Aim Aim(Quantity quantity) => Aims[(int)quantity];

    public Thickener Thickener(Quantity quantity) => Thickeners[(int)quantity];

    public DoseLimit Limit(Quantity quantity) => Limits[(int)quantity];

    /// <summary>The dose now of the thickener of a quantity, in %.</summary>
    public double DoseNow(Quantity quantity) => Now.Of(quantity);

    /// <summary>Readings of a quantity in this step.</summary>
    public int ReadingsOf(Quantity quantity) => quantity == Quantity.Body ? Step.Readings.Length : Step.Strings.Length;

    /// <summary>Whether a quantity was ever read.</summary>
    public bool IsRead(Quantity quantity) => (quantity == Quantity.Body ? Evidence.ReadingCount : Evidence.StringCount) > 0;

    /// <summary>The chances at doses, in the order of the aims.</summary>
    public ImmutableArray<QuantityChances> At(Doses doses) => [.. Aims.Select(a => a.Chances(Posterior.At(doses, a.Quantity)))];

    /// <summary>The chance at doses that all is in band; given the readings the quantities are independent.</summary>
    public double AllInBand(Doses doses) => At(doses).Aggregate(1.0, (all, chances) => all * chances.InBand);

    /// <summary>The doses in a pot.</summary>
    public Doses DosesIn(Pot pot)
        => Thickeners is [var body, var strings]
            ? new Doses(pot.DoseOf(body.Name), pot.DoseOf(strings.Name)) : pot.DoseOf(Thickeners[0].Name);

    /// <summary>Repeatability of the string.</summary>
    public Percentage StringRepeatability => Percentage.FromFraction(Evidence.StringRepeatability);

    /// <summary>The chance at doses that a quantity is over.</summary>
    public double Over(Quantity quantity, Doses doses) => Posterior.At(doses, quantity).ChanceAbove(Aim(quantity).High);

    /// <summary>The median of a quantity at doses, as a logarithm.</summary>
    public double Median(Quantity quantity, Doses doses) => Posterior.At(doses, quantity).Quantile(0.5);

    /// <summary>The least dose of a quantity's thickener, in % and from the one given on, at which the median is at the aim; the limit
    /// where none is.</summary>
    public double DoseForAim(Quantity quantity, Doses from)
        => First(quantity, from, x => Median(quantity, from.With(quantity, x)) >= Aim(quantity).Middle);

    /// <summary>The least dose of a quantity's thickener, in % and from the one given on, at which something holds; the limit where it
    /// never does.</summary>
    public double First(Quantity quantity, Doses from, Func<double, bool> holds)
    {
        const int places = 8;
        const int halvings = 7;
        var (start, end) = (from.Of(quantity), Limit(quantity).Dose.Percent);
        return end <= start || holds(start) ? start : Threshold.Of(start, end, holds, places, halvings).After;
    }

    /// <summary>Time in s until changes of the body, one for each draw, are as good as over.</summary>
    public TimeSpan WaitFor(double[] changes)
        => TimeSpan.FromSeconds(Settling.BuildUp.WaitUntilBelow(
            changes, Posterior.Kinetics(), Settling.Settled.Bound(Posterior.Repeatability)));
}

/// <summary>A band that a quantity is to come into, on the logarithmic scale.</summary>
/// <param name="Quantity">The quantity.</param>
/// <param name="Low">The logarithm of the least wanted; −∞ where there is no least.</param>
/// <param name="High">That of the greatest wanted.</param>
/// <param name="Middle">What is aimed at.</param>
internal sealed record Aim(Quantity Quantity, double Low, double High, double Middle)
{
    public static Aim Of(ViscosityBand band) => new(Quantity.Body, band.Low.Ln, band.High.Ln, band.Aim.Ln);

    /// <summary>The aim is the middle of the band on the scale where readings scatter evenly; half the greatest where there is no
    /// least.</summary>
    public static Aim Of(StringBand band)
    {
        var high = Math.Log(band.High.Millimeters);
        if (band.Low.Millimeters <= 0)
        {
            return new(Quantity.Stringiness, double.NegativeInfinity, high, high - Math.Log(2));
        }

        var low = Math.Log(band.Low.Millimeters);
        return new(Quantity.Stringiness, low, high, (low + high) / 2);
    }

    public QuantityChances Chances(LnEstimate value)
    {
        var over = value.ChanceAbove(High);
        return new(Math.Max(0, value.ChanceAbove(Low) - over), over);
    }
}

/// <summary>Chances of one quantity, as fractions.</summary>
/// <param name="InBand">It is in its band.</param>
/// <param name="Over">It is over.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct QuantityChances(double InBand, double Over);

/// <summary>What to do, before it is put as advice.</summary>
/// <param name="Action">What to do.</param>
/// <param name="Why">Why.</param>
internal sealed record Move(BenchAction Action, AdviceReason Why)
{
    /// <summary>The quantity whose thickener it is about.</summary>
    public Quantity About { get; init; }

    /// <summary>The doses after it; null where it leaves the pot as it is.</summary>
    public Doses? After { get; init; }

    /// <summary>What is still to come of each thickener, in the order of the quantities; empty for no plan.</summary>
    public ImmutableArray<PlannedDose?> Plan { get; init; } = [];

    /// <summary>Read the body once more.</summary>
    public static Move ReadBody(AdviceReason why, TimeSpan? standing = null) => new(new BenchAction.Measure(standing), why);

    /// <summary>Read the string once more.</summary>
    public static Move ReadString(AdviceReason why)
        => new(new BenchAction.Measure(null) { IsOfString = true }, why) { About = Quantity.Stringiness };

    /// <summary>Give up.</summary>
    public static Move GiveUp(Remedy remedy, AdviceReason why) => new(new BenchAction.GiveUp(remedy), why);
}
