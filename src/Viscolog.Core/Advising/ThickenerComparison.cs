using System.Collections.Immutable;
using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
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
    public static (ImmutableArray<Contender> Contenders, ImmutableArray<string> LeftAside) Of(
        IReadOnlyList<Run> runs, ViscosityBand body, StringBand? strings)
    {
        var found = ImmutableArray.CreateBuilder<Contender>();
        var aside = ImmutableArray.CreateBuilder<string>();
        foreach (var group in runs.GroupBy(Key, StringComparer.Ordinal).Where(g => g.Key.Length > 0)
            .OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var latest = group.Last();
            Run[] alike = [.. group.Where(r => ShearConditions.Agree(r, latest))];
            var isPair = PairRoles.Apply(latest);
            if (isPair && strings is null)
            {
                aside.Add($"{group.Key}: two thickeners are compared for body and string together; give the string wanted");
            }
            else if ((isPair ? Pair(alike, body, strings!) : Single(alike, body)) is { } contender)
            {
                found.Add(contender);
            }
            else
            {
                aside.Add($"{group.Key}: too little is known; it needs a run with readings at two doses or more");
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

        return run.PotNow() is var pot
            && run.Thickeners.Count(t => pot.In(t.Name) > Mass.None) == 1 ? Evidence.MainThickener(run)!.Name : "";
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

        var posterior = Posteriors.Under(evidence, prior, null);
        var dose = posterior.DoseFor(body.Aim, Study.Level);
        Spread? spread = dose is null ? null : new(dose.Median.Percent, dose.Low.Percent, dose.High?.Percent);
        return new([thickener], prior.Runs, posterior.ChanceOfReaching(body.Low, thickener.UsualRange.Top))
        {
            Dose = spread,
            Cost = thickener.PricePerKilogram is { } price && spread is not null ? spread.Times((double)price / 100) : null,
            Water = WaterPart(thickener) is { } water && spread is not null ? spread.Times(water) : null,
        };
    }

    private static Contender? Pair(Run[] runs, ViscosityBand body, StringBand strings)
    {
        var posteriors = runs.Select(r => Posteriors.OfPair(r, [])).OfType<PosteriorOutcome.Found>().Select(b => b.Posterior)
            .Where(b => b.Evidence.Steps.Count(s => s.Readings.Length > 0) >= 2 && b.Evidence.StringCount >= 2).ToArray();
        if (posteriors.Length == 0)
        {
            return null;
        }

        var roles = posteriors[^1].Evidence.Roles;
        var draws = posteriors.SelectMany(b => PairDoses.Draws(b, body, strings)).ToArray();
        var reached = draws.OfType<Doses>().ToArray();
        var (first, second) = (roles.BodyThickener, roles.StringThickener);
        Spread? Of(double? perFirst, double? perSecond)
            => perFirst is { } a && perSecond is { } b
                && 2 * reached.Length > draws.Length
                    ? PairDoses.Spread([.. draws.Select(d => d is null
                        ? double.PositiveInfinity : (a * d.Value.Body.Percent) + (b * d.Value.Strings.Percent))]) : null;
        return new([first, second], posteriors.Length, Percentage.FromFraction((double)reached.Length / draws.Length))
        {
            Dose = Of(1, 1),
            Cost = Of((double?)first.PricePerKilogram / 100, (double?)second.PricePerKilogram / 100),
            Water = Of(WaterPart(first), WaterPart(second)),
        };
    }

    /// <summary>Water for each part of thickener as supplied.</summary>
    private static double? WaterPart(Thickener thickener)
        => thickener.Active is { } active
            ? 1 - active.Fraction + (thickener.Dilution.WaterParts / thickener.Dilution.ThickenerParts) : null;
}

/// <summary>What a thickener, or a pair of them, needs to reach a target in a base; intervals hold 9 times in 10.</summary>
/// <param name="Thickeners">One or two.</param>
/// <param name="Runs">Runs that tell of it.</param>
/// <param name="ChanceReached">The chance that the target is reached within the usual range.</param>
public sealed record Contender(ImmutableArray<Thickener> Thickeners, int Runs, Percentage ChanceReached)
{
    /// <summary>Dose of all thickeners together in g per 100 g of base; null where the target is not expected to be reached.</summary>
    public Spread? Dose { get; init; }

    /// <summary>Cost for 1 kg of base in the user's currency; null where a price is not stated.</summary>
    public Spread? Cost { get; init; }

    /// <summary>Water brought in, in g per 100 g of base: what is not active matter, and dilution water; null where the active matter is
    /// not stated.</summary>
    public Spread? Water { get; init; }

    /// <summary>What the thickeners are called together.</summary>
    public string Name => string.Join(" + ", Thickeners.Select(t => t.Name));
}

/// <summary>Something that is not known exactly, in the unit that its holder states.</summary>
/// <param name="Median">As likely to be above as below.</param>
/// <param name="Low">The interval's low end.</param>
/// <param name="High">Its high end; null where it lies beyond what is considered.</param>
public sealed record Spread(double Median, double Low, double? High)
{
    /// <summary>The same times a factor above 0.</summary>
    public Spread Times(double factor) => new(Median * factor, Low * factor, High * factor);
}
