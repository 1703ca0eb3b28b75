using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Where a pot stands now: each quantity to what is wanted of it, at the doses that are in the pot.</summary>
/// <param name="Quantities">The body first; the string where a second thickener is to bring one.</param>
/// <param name="Thickeners">What is in the pot of each, in the same order.</param>
/// <param name="Chances">Where all of them lie to their bands; null where one has no band, or has not been read.</param>
public sealed record PotStanding(
    ImmutableArray<StandingQuantity> Quantities,
    ImmutableArray<ThickenerInPot> Thickeners,
    BandChances? Chances)
{
    /// <summary>Whether every quantity has been read.</summary>
    public bool IsAllRead => Quantities.All(q => q.IsRead);

    internal static PotStanding Of(Study study)
    {
        var (posterior, evidence, pot) = (study.Posterior, study.Evidence, study.Run.PotNow());
        Thickener?[] thickeners = [evidence.Thickener, evidence.StringThickener];
        ThickenerInPot[] inPot =
        [
            .. thickeners.OfType<Thickener>().Select(t => new ThickenerInPot(t.Name, pot.DoseOf(t.Name), pot.ShareOf(t.Name))),
        ];
        var doses = new Doses(inPot[0].Dose, inPot.Length > 1 ? inPot[1].Dose : Dose.None);
        StandingQuantity body = new StandingQuantity.OfBody(posterior.BodyAt(doses, Study.Level), study.Band) { IsRead = study.IsRead };
        Aim?[] aims = [study.Band is { } band ? Aim.Of(band) : null];
        ImmutableArray<StandingQuantity> quantities = [body];
        if (evidence.StringThickener is not null)
        {
            var wanted = study.Run.TargetString;
            quantities = quantities.Add(
                new StandingQuantity.OfString(posterior.StringAt(doses, Study.Level), wanted) { IsRead = evidence.StringCount > 0 });
            aims = [.. aims, wanted is null ? null : Aim.Of(wanted)];
        }

        var isKnown = Array.TrueForAll(aims, a => a is not null) && quantities.All(q => q.IsRead);
        return new(quantities, [.. inPot], isKnown ? BandChances.Of(aims.Select(a => a!.Chances(posterior.At(doses, a.Quantity)))) : null);
    }
}

/// <summary>A quantity of a pot as it stands now. The set of cases is closed.</summary>
public abstract record StandingQuantity
{
    private protected StandingQuantity()
    {
    }

    /// <summary>Whether it has been read in this run.</summary>
    public required bool IsRead { get; init; }

    /// <summary>The settled body.</summary>
    /// <param name="Now">What it is.</param>
    /// <param name="Band">What is wanted; null for nothing.</param>
    public sealed record OfBody(Estimate Now, ViscosityBand? Band) : StandingQuantity;

    /// <summary>The length of string.</summary>
    /// <param name="Now">What it is.</param>
    /// <param name="Band">What is wanted; null for nothing.</param>
    public sealed record OfString(LengthEstimate Now, StringBand? Band) : StandingQuantity;
}

/// <summary>A thickener in the pot.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Dose">Its dose now.</param>
/// <param name="Share">Its share of everything in the pot now.</param>
public sealed record ThickenerInPot(string Name, Dose Dose, Percentage Share);

/// <summary>Where quantities lie to their bands, by chance; the three sum to 100 %.</summary>
/// <param name="Under">One is below its band, and none above.</param>
/// <param name="InBand">All are in band.</param>
/// <param name="Over">One is above its band.</param>
public sealed record BandChances(Percentage Under, Percentage InBand, Percentage Over)
{
    /// <summary>The chances of all together; given the readings they are independent.</summary>
    internal static BandChances Of(IEnumerable<QuantityChances> each)
    {
        var (all, noneOver) = each.Aggregate((All: 1.0, NoneOver: 1.0), (sum, q)
            => (sum.All * Math.Clamp(q.InBand, 0, 1), sum.NoneOver * (1 - Math.Clamp(q.Over, 0, 1))));
        var inBand = Math.Min(all, noneOver);
        return new(Percentage.FromFraction(noneOver - inBand), Percentage.FromFraction(inBand), Percentage.FromFraction(1 - noneOver));
    }
}
