using System.Collections.Immutable;
using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Computes what pictures of a run with two thickeners show.</summary>
public static class PairPictures
{
    private const int SliceSamples = 50;
    private const int MapSamples = 32;

    /// <summary>The picture of a run as believed.</summary>
    /// <param name="posterior">The posterior.</param>
    /// <param name="band">The band of the body; null for none.</param>
    /// <param name="advice">The advice, for its addition and plan; null for none.</param>
    /// <param name="level">Level of the bands.</param>
    public static PairPicture Of(Posterior posterior, ViscosityBand? band, Advice? advice, Percentage level)
    {
        var (evidence, roles) = (posterior.Evidence, posterior.Evidence.Roles);
        ImmutableArray<PairPoint> path = [.. evidence.Steps.Select(Point)];
        var (now, next, end) = (path[^1].Place, Next(path[^1].Place, roles, advice), End(path[^1].Place, roles, advice));
        var (body, strings) = Window(posterior, path, [next, end]);
        return new(evidence.Run.Name, roles.BodyThickener.Name, roles.StringThickener.Name, evidence.Run.ReferenceTemperatureInForce)
        {
            Path = path,
            Target = band,
            TargetString = evidence.Run.TargetString,
            Next = next,
            End = end,
            OverBody = new(roles.BodyThickener.Name, roles.StringThickener.Name, now.Second, [.. Even(body, SliceSamples).Select(d => Sample(posterior, d, d, now.Second, level))]),
            OverString = new(roles.StringThickener.Name, roles.BodyThickener.Name, now.Body, [.. Even(strings, SliceSamples).Select(d => Sample(posterior, d, now.Body, d, level))]),
            Map = Map(posterior, Even(body, MapSamples), Even(strings, MapSamples)),
        };
    }

    private static PairPoint Point(EvidenceStep step) => new(
        new(step.Doses.Body, step.Doses.Strings),
        [.. step.Readings.Select(r => Viscosity.FromLn(r.Ln))],
        [.. step.Strings.Select(r => Length.FromMillimeters(Math.Exp(r.Ln)))]);

    private static PairPlace? Next(PairPlace now, PairRoles roles, Advice? advice) => advice?.Action switch
    {
        BenchAction.Add add => advice.Thickener.Name == roles.BodyThickener.Name ? now with { Body = add.After } : now with { Second = add.After },
        _ => null,
    };

    private static PairPlace? End(PairPlace now, PairRoles roles, Advice? advice)
    {
        if (advice is null || advice.Thickeners.All(t => t.Planned is null))
        {
            return null;
        }

        Dose After(Dose from, string thickener) => Dose.FromPercent(from.Percent + advice.Thickeners.Where(t => t.Name == thickener).Sum(t => t.Planned?.About.Percent ?? 0));
        return new(After(now.Body, roles.BodyThickener.Name), After(now.Second, roles.StringThickener.Name));
    }

    /// <summary>As far as the pot has come or is to come, and somewhat beyond.</summary>
    private static (double Body, double String) Window(Posterior posterior, ImmutableArray<PairPoint> path, PairPlace?[] ahead)
    {
        const double beyond = 1.25;
        var places = path.Select(p => p.Place).Concat(ahead.OfType<PairPlace>()).ToArray();
        double End(Func<PairPlace, double> dose, double top) => Math.Max(0.2 * top, beyond * places.Max(dose));
        return (End(p => p.Body.Percent, posterior.Evidence.RangeTop), End(p => p.Second.Percent, posterior.Evidence.StringTop));
    }

    private static ImmutableArray<Dose> Even(double end, int samples) => [.. Enumerable.Range(0, samples + 1).Select(i => Dose.FromPercent(end * i / samples))];

    private static PairSample Sample(Posterior posterior, Dose at, Dose body, Dose strings, Percentage level) => new(at, posterior.BodyAt(new(body, strings), level), posterior.StringAt(new(body, strings), level));

    private static PairMap Map(Posterior posterior, ImmutableArray<Dose> body, ImmutableArray<Dose> strings) => new(
        body,
        strings,
        [.. strings.SelectMany(s => body.Select(b => Viscosity.FromLn(posterior.LnBodyAt(b.Percent, s.Percent).Mean)))],
        [.. strings.SelectMany(s => body.Select(b => Length.FromMillimeters(Math.Exp(posterior.LnStringAt(b.Percent, s.Percent).Mean))))]);
}
