using System.Collections.Immutable;
using Viscolog.Core.Curves;
using Viscolog.Core.Fitting;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Inference;

/// <summary>
/// The report of a fit of two thickeners. The parameters are means and standard deviations of the posterior: what readings and priors say
/// together,
/// with a mark where the readings leave a parameter nearly as unsure as its prior did.
/// </summary>
public static class PairFits
{
    /// <summary>Part of the prior's standard deviation from which on the prior decides (a rule of this project).</summary>
    private const double PriorPart = 0.8;

    /// <summary>Shapes under this weight are left out.</summary>
    private const double LeastWeight = 0.05;

    /// <summary>Reports.</summary>
    public static PairFit Of(Posterior posterior) => new(Shapes(posterior), Body(posterior), Strings(posterior));

    private static PairBodyDraw[] Bodies(Posterior posterior) => [.. posterior.Bodies.Cast<PairBodyDraw>()];

    private static ImmutableArray<ShapeFit> Shapes(Posterior posterior) =>
    [
        .. posterior.ShapeWeights.Select(
            (weight, s) => (Weight: weight, Place: s)).Where(w => w.Weight >= LeastWeight).OrderByDescending(w => w.Weight)
            .Select(w => new ShapeFit(Curves.Shapes.All[w.Place], w.Weight, Parameters(posterior, w.Place), null, null, null, null)),
    ];

    private static ImmutableArray<FittedParameter> Parameters(Posterior posterior, int place)
    {
        var draws = Bodies(posterior).Where(b => b.ShapeIndex == place).ToArray();
        return
        [
            .. Curves.Shapes.All[place].Parameters.Select((p, j) =>
            {
                var (unit, scale) = p.Unit == "R" ? ("%", posterior.Evidence.RangeTop) : (p.Unit, 1);
                return Positive(p.Name, unit, scale, draws.Select(d => d.LogShape[j]), p.LogSd);
            }),
        ];
    }

    private static ImmutableArray<FittedParameter> Body(Posterior posterior)
    {
        var roles = posterior.Evidence.Roles;
        var bodies = Bodies(posterior);
        var fitted = ImmutableArray.CreateBuilder<FittedParameter>();
        fitted.Add(Positive("base", "mPa·s", 1, bodies.Select(c => c.At(0, 0).Mean), PosteriorSettings.BaseLogSd));
        fitted.Add(Signed($"rise by {roles.StringThickener.Name} at its range top", bodies.Select(c => (c.Now.First, c.Now.FirstSd)),
            PairSettings.BodyRiseSd));
        fitted.Add(Signed($"more of that at the range top of {roles.BodyThickener.Name}",
            bodies.Select(c => (c.Now.Second, c.Now.SecondSd)), PairSettings.CrossSd));
        fitted.Add(Positive($"exponent of {roles.StringThickener.Name}", "1", 1, bodies.Select(c => Math.Log(c.Exponent)),
            PairSettings.ExponentLogSd));
        if (posterior.Evidence.Steps.Skip(1).Any(s => s.Readings.Any(r => double.IsFinite(r.WaitSeconds))))
        {
            fitted.Add(Positive("time constant", "s", 1, bodies.Select(c => Math.Log(c.Kinetics.TimeConstant)),
                KineticsPrior.Of(posterior.Evidence.Thickener.Chemistry).Spread));
        }

        return fitted.ToImmutable();
    }

    private static ImmutableArray<FittedParameter> Strings(Posterior posterior)
    {
        var roles = posterior.Evidence.Roles;
        var strings = posterior.Strings;
        return
        [
            Positive("base", "mm", 1, strings.Select(c => c.At(0, 0).Mean), PairSettings.StringBaseLogSd),
            Signed($"rise by {roles.BodyThickener.Name} at its range top", strings.Select(c => (c.Now.First, c.Now.FirstSd)),
                PairSettings.StringByBodySd),
            Signed($"rise by {roles.StringThickener.Name} at its range top", strings.Select(c => (c.Now.Second, c.Now.SecondSd)),
                PairSettings.StringRiseSd),
            .. Rises(posterior),
            Positive("repeatability", "%", 100, strings.Select(c => Math.Log(c.Repeatability)), PairSettings.StringRepeatabilityLogSd),
        ];
    }

    /// <summary>The forms of the string's rise that matter, each with how likely it is and its numbers.</summary>
    private static IEnumerable<FittedParameter> Rises(Posterior posterior)
    {
        var bent = posterior.Strings.Where(c => c.Form is BentString).ToArray();
        var late = posterior.Strings.Where(c => c.Form is LateString).ToArray();
        if (bent.Length >= LeastWeight * posterior.Strings.Length)
        {
            yield return Signed("bend", bent.Select(c => (c.Numbers[0], 0.0)), bent[0].Form.Priors[0].Sd) with { Unit = "1" };
        }

        if (late.Length >= LeastWeight * posterior.Strings.Length)
        {
            var chance = (double)late.Length / posterior.Strings.Length;
            yield return new("chance of a late rise", "%", 100 * chance, null, false);
            yield return Positive(
                "its half-way dose", "%", posterior.Evidence.StringTop, late.Select(c => c.Numbers[0]), late[0].Form.Priors[0].Sd);
            yield return Positive("its steepness", "1", 1, late.Select(c => c.Numbers[1]), late[0].Form.Priors[1].Sd);
        }
    }

    private static FittedParameter Positive(string name, string unit, double scale, IEnumerable<double> logs, double priorSd)
    {
        var (mean, sd) = Moments(logs.Select(l => (l, 0.0)));
        var value = Math.Exp(mean) * scale;
        return new(name, unit, value, value * sd, sd > PriorPart * priorSd);
    }

    private static FittedParameter Signed(string name, IEnumerable<(double Mean, double Sd)> draws, double priorSd)
    {
        var (mean, sd) = Moments(draws);
        return new(name, "ln", mean, sd, sd > PriorPart * priorSd);
    }

    private static (double Mean, double Sd) Moments(IEnumerable<(double Mean, double Sd)> draws)
    {
        var all = draws.ToArray();
        if (all.Length == 0)
        {
            return (0, 0);
        }

        var mean = all.Average(c => c.Mean);
        return (mean, Math.Sqrt(all.Average(c => ((c.Mean - mean) * (c.Mean - mean)) + (c.Sd * c.Sd))));
    }
}

/// <summary>The two models of a run with two thickeners, with what the readings leave open of their parameters.</summary>
/// <param name="Shapes">The shapes of the body thickener's curve that matter, heaviest first.</param>
/// <param name="Body">What the body model has beside its shape.</param>
/// <param name="Strings">The string model.</param>
public sealed record PairFit(
    ImmutableArray<ShapeFit> Shapes, ImmutableArray<FittedParameter> Body, ImmutableArray<FittedParameter> Strings);
