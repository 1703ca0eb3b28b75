namespace Viscolog.Core.Advising;

/// <summary>
/// Chooses the next addition of two thickeners: escalation with overdose control as for one (see <see cref="IncrementPolicy"/>), over body and string.
/// Each addition keeps the chance of going over in either within the risk and leaves room for what the other thickener will still do.
/// </summary>
internal sealed class PairPolicy
{
    /// <summary>A chance of both in band that is worth aiming at.</summary>
    public const double WorthAiming = 0.45;

    /// <summary>The chance, in the end, of having no room left that an addition may carry.</summary>
    public const double RoomRisk = 0.05;

    /// <summary>What part of the risk that a pot of one thickener allows an addition is allowed here, where about twice as many are made.</summary>
    public const double RiskOfOne = 0.875;

    /// <summary>How much more a step on the string's way counts than one on the body's: what brings the string thickens too, so it is learned first.</summary>
    public const double StringFirst = 1.3;

    /// <summary>The chance of over, in all, that no addition goes beyond, in multiples of the risk.</summary>
    public const double MostRisk = 5;

    private const int Candidates = 14;

    /// <summary>Parts of the posterior at which the dose that the string will want is looked at.</summary>
    private static readonly double[] NeedParts = [0.1, 0.3, 0.5, 0.7, 0.9];

    private readonly PairSituation at;
    private readonly double[] needs;
    private readonly (double Body, double String) over;
    private readonly double risk;

    public PairPolicy(PairSituation situation, double risk)
    {
        (at, this.risk) = (situation, risk);
        var (body, strings) = (at.BodyNow, at.StringNow);
        for (var i = 0; i < 3; i++)
        {
            strings = at.StringDoseFor(body, at.StringNow);
            body = at.BodyDoseFor(strings, at.BodyNow);
        }

        (BodyEnd, StringEnd) = (body, strings);
        over = (at.BodyOver(at.BodyNow, at.StringNow), at.StringOver(at.BodyNow, at.StringNow));
        needs = [.. NeedParts.Select(part => at.StringDoseWanted(body, part))];
    }

    /// <summary>Where the body thickener's dose is expected to end, in %.</summary>
    public double BodyEnd { get; }

    /// <summary>Where the string thickener's dose is expected to end, in %.</summary>
    public double StringEnd { get; }

    /// <summary>Chooses.</summary>
    /// <returns>Null where no addition keeps within the risk.</returns>
    public PairChoice? Choose()
    {
        var (body, strings) = (Consider(false), Consider(true));
        if (body is null || strings is null)
        {
            return body ?? strings;
        }

        if (Math.Max(body.BestBoth, strings.BestBoth) >= WorthAiming)
        {
            return body.BestBoth >= strings.BestBoth ? body : strings;
        }

        return Gain(body) >= StringFirst * Gain(strings) ? body : strings;
    }

    /// <summary>How much of the way to its aim an addition covers, in half widths of the band.</summary>
    public double Gain(PairChoice choice)
    {
        if (choice.IsString)
        {
            double Median(double x) => at.Posterior.LnStringAt(at.BodyNow, x).Quantile(0.5);
            return (Math.Min(Median(choice.DosePercent), at.StringAim) - Median(at.StringNow)) / ((at.HighString - at.StringAim) / 2);
        }

        double Body(double x) => at.Posterior.LnBodyAt(x, StringEnd).Quantile(0.5);
        return (Math.Min(Body(choice.DosePercent), at.Band.Aim.Ln) - Body(at.BodyNow)) / (at.Band.High.Ln - at.Band.Aim.Ln);
    }

    private PairChoice? Consider(bool isString)
    {
        var roles = at.Posterior.Evidence.Roles;
        var (now, limit, top) = isString
            ? (at.StringNow, at.StringLimit.Dose.Percent, roles.StringThickener.UsualRange.Top.Percent)
            : (at.BodyNow, at.BodyLimit.Dose.Percent, roles.BodyThickener.UsualRange.Top.Percent);
        var cap = now + (IncrementPolicy.StepCap * top);
        var most = Math.Min(cap, limit);
        if (most <= now)
        {
            return null;
        }

        var (ceiling, bound) = Ceiling(isString, now, most);
        if (ceiling <= now)
        {
            return null;
        }

        var (best, bestBoth) = (ceiling, -1.0);
        for (var i = 1; i <= Candidates; i++)
        {
            var dose = now + ((ceiling - now) * i / Candidates);
            var both = (isString ? at.At(at.BodyNow, dose) : at.At(dose, at.StringNow)).Both;
            (best, bestBoth) = both > bestBoth + 1e-9 ? (dose, both) : (best, bestBoth);
        }

        if (bestBoth >= WorthAiming && best < ceiling)
        {
            return new(isString, best, bestBoth, PairBound.BestChance);
        }

        return new(isString, ceiling, bestBoth, bound ?? (limit <= cap ? PairBound.Limit : PairBound.StepCap));
    }

    /// <summary>The largest dose up to which every dose on the way is allowed, and what forbids more.</summary>
    private (double Dose, PairBound? Bound) Ceiling(bool isString, double now, double most)
    {
        PairBound? forbids = null;
        var (low, high) = (now, most);
        for (var i = 1; i <= Candidates; i++)
        {
            high = now + ((most - now) * i / Candidates);
            if (Forbidden(isString, high) is { } bound)
            {
                forbids = bound;
                break;
            }

            low = high;
        }

        for (var i = 0; i < 8 && high > low; i++)
        {
            var middle = (low + high) / 2;
            var bound = Forbidden(isString, middle);
            forbids = bound ?? forbids;
            (low, high) = bound is null ? (middle, high) : (low, middle);
        }

        return (low, forbids);
    }

    /// <summary>What stands already can't be undone by adding nothing; only what an addition brings on top counts against its risk.</summary>
    private static double Added(double after, double before) => Math.Max(0, after - before);

    private PairBound? Forbidden(bool isString, double dose)
    {
        var (body, strings) = isString ? (at.BodyNow, dose) : (dose, at.StringNow);
        var (bodyOver, stringOver) = (at.BodyOver(body, strings), at.StringOver(body, strings));
        if (Added(bodyOver, over.Body) + Added(stringOver, over.String) > risk || bodyOver + stringOver - (bodyOver * stringOver) > MostRisk * risk)
        {
            return bodyOver >= stringOver ? PairBound.BodyRisk : PairBound.StringRisk;
        }

        var stuck = isString
            ? at.StringOver(Math.Max(BodyEnd, body), strings)
            : needs.Average(need => at.BodyOver(body, Math.Max(need, strings)));
        return stuck > Math.Max(risk, RoomRisk) ? PairBound.Room : null;
    }
}

/// <summary>What keeps an addition from being larger.</summary>
internal enum PairBound
{
    /// <summary>Nothing: it is the one with the best chance.</summary>
    BestChance,

    /// <summary>The risk that the body goes over.</summary>
    BodyRisk,

    /// <summary>The risk that the string goes over.</summary>
    StringRisk,

    /// <summary>Room for what the other thickener will still do.</summary>
    Room,

    /// <summary>The step cap.</summary>
    StepCap,

    /// <summary>The dose limit.</summary>
    Limit,
}

/// <summary>One addition that the policy considers or chose.</summary>
/// <param name="IsString">Whether it is of the thickener that brings the string.</param>
/// <param name="DosePercent">The dose to go to, in %.</param>
/// <param name="BestBoth">The greatest chance of both in band among the doses allowed, as a fraction.</param>
/// <param name="Bound">What kept it from being larger.</param>
internal sealed record PairChoice(bool IsString, double DosePercent, double BestBoth, PairBound Bound);
