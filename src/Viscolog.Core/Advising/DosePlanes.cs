using System.Collections.Immutable;
using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Computes what a picture of a run with two thickeners shows over both doses.</summary>
internal static class DosePlanes
{
    private const int SliceSamples = 50;
    private const int MapSamples = 32;

    /// <summary>Body and string over the doses of a run with two thickeners.</summary>
    /// <param name="posterior">The posterior.</param>
    /// <param name="advice">The advice, for its addition and plan; null for none.</param>
    /// <param name="level">Level of the bands.</param>
    public static DosePlane Of(Posterior posterior, Advice? advice, Percentage level)
    {
        var roles = posterior.Evidence.Roles;
        ImmutableArray<PlanePoint> path = [.. posterior.Evidence.Steps.Select(Point)];
        var now = path[^1].Place;
        var (next, end) = (Next(now, roles, advice), End(now, roles, advice));
        var (body, strings) = Window(posterior, path, [next, end]);
        var (first, second) = (roles.BodyThickener.Name, roles.StringThickener.Name);
        return new(
            new(first, second, now.Strings, [.. Even(body, SliceSamples).Select(d => Sample(posterior, d, now with { Body = d }, level))]),
            new(second, first, now.Body, [.. Even(strings, SliceSamples)
                .Select(d => Sample(posterior, d, now with { Strings = d }, level))]),
            Map(posterior, Even(body, MapSamples), Even(strings, MapSamples)),
            path)
        {
            Next = next,
            End = end,
        };
    }

    private static PlanePoint Point(EvidenceStep step) => new(
        new(step.Doses.Body, step.Doses.Strings),
        [.. step.Readings.Select(r => Viscosity.FromLn(r.Ln))],
        [.. step.Strings.Select(r => Length.FromMillimeters(Math.Exp(r.Ln)))]);

    private static Doses? Next(Doses now, PairRoles roles, Advice? advice) => advice?.Action switch
    {
        BenchAction.Add add => advice.Thickener.Name == roles.BodyThickener.Name
            ? now with { Body = add.After } : now with { Strings = add.After },
        BenchAction.LetDown down when now.Body.Percent > 0 => new(
            down.After, Dose.FromPercent(now.Strings.Percent * down.After.Percent / now.Body.Percent)),
        _ => null,
    };

    private static Doses? End(Doses now, PairRoles roles, Advice? advice)
    {
        if (advice is null || advice.Thickeners.All(t => t.Planned is null))
        {
            return null;
        }

        Dose After(Dose from, string thickener)
            => Dose.FromPercent(from.Percent + advice.Thickeners.Where(t => t.Name == thickener).Sum(t => t.Planned?.About.Percent ?? 0));
        return new(After(now.Body, roles.BodyThickener.Name), After(now.Strings, roles.StringThickener.Name));
    }

    /// <summary>As far as the pot has come or is to come, and somewhat beyond.</summary>
    private static (double Body, double String) Window(Posterior posterior, ImmutableArray<PlanePoint> path, Doses?[] ahead)
    {
        const double beyond = 1.25;
        var places = path.Select(p => p.Place).Concat(ahead.OfType<Doses>()).ToArray();
        double End(Func<Doses, double> dose, double top) => Math.Max(0.2 * top, beyond * places.Max(dose));
        return (End(p => p.Body.Percent, posterior.Evidence.RangeTop), End(p => p.Strings.Percent, posterior.Evidence.StringTop));
    }

    private static ImmutableArray<Dose> Even(double end, int samples)
        => [.. Enumerable.Range(0, samples + 1).Select(i => Dose.FromPercent(end * i / samples))];

    private static SliceSample Sample(Posterior posterior, Dose at, Doses doses, Percentage level)
        => new(at, posterior.BodyAt(doses, level), posterior.StringAt(doses, level));

    private static DoseMap Map(Posterior posterior, ImmutableArray<Dose> body, ImmutableArray<Dose> strings) => new(
        body,
        strings,
        [.. strings.SelectMany(s => body.Select(b => Viscosity.FromLn(posterior.At(new(b, s)).Mean)))],
        [
            .. strings.SelectMany(
                s => body.Select(b => Length.FromMillimeters(Math.Exp(posterior.At(new(b, s), Quantity.Stringiness).Mean)))),
        ]);
}
