using System.Collections.Immutable;
using Viscolog.Core.Curves;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Compares, from earlier runs in one base, what thickeners and pairs of them need to reach a target.</summary>
public static class ThickenerComparison
{
    /// <summary>Compares.</summary>
    /// <param name="runs">Runs of one base, the earliest first.</param>
    /// <param name="body">The body wanted.</param>
    /// <param name="strings">The string wanted; null for none, and then pairs are left aside.</param>
    /// <returns>Those of which enough is known, the least dose first; and what had to be left aside, in words.</returns>
    public static (ImmutableArray<Contender> Contenders, ImmutableArray<string> LeftAside) Of(IReadOnlyList<Run> runs, ViscosityBand body, StringBand? strings)
    {
        var found = ImmutableArray.CreateBuilder<Contender>();
        var aside = ImmutableArray.CreateBuilder<string>();
        foreach (var group in runs.GroupBy(Key, StringComparer.Ordinal).Where(g => g.Key.Length > 0).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var latest = group.Last();
            Run[] alike = [.. group.Where(r => ShearConditions.Agree(r, latest))];
            var isPair = PairRoles.Apply(latest);
            if (isPair && strings is null)
            {
                aside.Add($"{group.Key}: two thickeners are compared for body and string together; state the string wanted");
            }
            else if ((isPair ? Pair(alike, body, strings!) : Single(alike, body)) is { } contender)
            {
                found.Add(contender);
            }
            else
            {
                aside.Add($"{group.Key}: too little is known; a run with readings at two doses or more is needed");
            }
        }

        return ([.. found.OrderBy(c => c.Dose?.Median ?? double.PositiveInfinity)], aside.ToImmutable());
    }

    private static string Key(Run run)
    {
        if (PairRoles.Of(run) is { } roles && PairRoles.Apply(run))
        {
            return $"{roles.BodyThickener.Name} + {roles.StringThickener.Name}";
        }

        return run.PotNow() is var pot && run.Thickeners.Count(t => pot.In(t.Name) > Mass.None) == 1 ? Evidence.MainThickener(run)!.Name : "";
    }

    /// <summary>The forecast of a new pot from the earlier ones, lots differing as they do.</summary>
    private static Contender? Single(Run[] runs, ViscosityBand body)
    {
        var latest = runs[^1];
        var thickener = Evidence.MainThickener(latest)!;
        var next = latest with { Entries = [], Thickeners = [thickener], TargetString = null };
        var prior = History.For(next, thickener, [.. runs]);
        if (prior.Runs == 0 || Evidence.Of(next, thickener) is not EvidenceOutcome.Usable { Evidence: var evidence })
        {
            return null;
        }

        var belief = Belief.From(evidence, prior, null);
        var dose = belief.DoseFor(body.Aim, Advisor.Level);
        Spread? spread = dose is null ? null : new(dose.Median.Percent, dose.Low.Percent, dose.High?.Percent);
        return new([thickener], prior.Runs, belief.ChanceOfReaching(body.Low, thickener.UsualRange.Top))
        {
            Dose = spread,
            Cost = thickener.PricePerKilogram is { } price && spread is not null ? spread.Times((double)price / 100) : null,
            Water = WaterPart(thickener) is { } water && spread is not null ? spread.Times(water) : null,
        };
    }

    private static Contender? Pair(Run[] runs, ViscosityBand body, StringBand strings)
    {
        var beliefs = runs.Select(r => PairBeliefs.Of(r, [])).OfType<PairBeliefOutcome.Believed>().Select(b => b.Belief)
            .Where(b => b.Evidence.Steps.Count(s => s.Body.Readings.Length > 0) >= 2 && b.Evidence.StringReadings >= 2).ToArray();
        if (beliefs.Length == 0)
        {
            return null;
        }

        var roles = beliefs[^1].Evidence.Roles;
        var draws = beliefs.SelectMany(b => PairDoses.Draws(b, body, strings)).ToArray();
        var reached = draws.OfType<PairPlace>().ToArray();
        var (first, second) = (roles.BodyThickener, roles.StringThickener);
        Spread? Of(double? perFirst, double? perSecond)
            => perFirst is { } a && perSecond is { } b && 2 * reached.Length > draws.Length ? PairDoses.Spread([.. draws.Select(d => d is null ? double.PositiveInfinity : (a * d.Body.Percent) + (b * d.Second.Percent))]) : null;
        return new([first, second], beliefs.Length, Percentage.FromFraction((double)reached.Length / draws.Length))
        {
            Dose = Of(1, 1),
            Cost = Of((double?)first.PricePerKilogram / 100, (double?)second.PricePerKilogram / 100),
            Water = Of(WaterPart(first), WaterPart(second)),
        };
    }

    /// <summary>Water for each part of thickener as supplied.</summary>
    private static double? WaterPart(Thickener thickener)
        => thickener.Active is { } active ? 1 - active.Fraction + (thickener.Dilution.WaterParts / thickener.Dilution.ThickenerParts) : null;
}
