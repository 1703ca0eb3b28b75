using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>
/// Chooses the next addition of two thickeners: escalation with overdose control as for one (see <see cref="IncrementPolicy"/>), over body
/// and string.
/// Each addition keeps the chance of going over in either within the risk and leaves room for what the other thickener will still do.
/// </summary>
internal sealed class TwoThickeners : AdditionPolicy
{
    /// <summary>A chance of both in band that is worth aiming at.</summary>
    private const double WorthAiming = 0.45;

    /// <summary>The chance, in the end, of having no room left that an addition may carry.</summary>
    private const double RoomRisk = 0.05;

    /// <summary>What part of the risk that a pot of one thickener allows an addition is allowed here, where about twice as many are
    /// made.</summary>
    private const double RiskOfOne = 0.75;

    /// <summary>How much more a step on the string's way counts than one on the body's: what brings the string thickens too, so it is
    /// learned first.</summary>
    private const double StringFirst = 1.3;

    /// <summary>The chance of over, in all, that no addition goes beyond, in multiples of the risk.</summary>
    private const double MostRisk = 5;

    /// <summary>An addition that covers less of its way than this, in half widths of the band, is not worth making while a reading may
    /// free a larger one.</summary>
    private const double SmallGain = 3;

    /// <summary>An addition that covers less than this is none.</summary>
    private const double NoGain = 0.1;

    /// <summary>Readings of string in one step before base is advised on their account.</summary>
    private const int StringsBeforeBase = 3;

    private const int Candidates = 14;

    /// <summary>Parts of the posterior at which the dose that the string will want is looked at.</summary>
    private static readonly double[] NeedParts = [0.1, 0.3, 0.5, 0.7, 0.9];

    private readonly Doses _end;
    private readonly double[] _needs;
    private readonly (double Body, double Strings) _over;
    private readonly double _risk;

    public TwoThickeners(Situation at)
        : base(at, DecisionSettings.Two)
    {
        _risk = Percentage.FromFraction(RiskOfOne * at.Request.Risk.Fraction).Fraction;
        _end = at.Now;
        for (var i = 0; i < 3; i++)
        {
            _end = at.Now.With(Quantity.Stringiness, at.DoseForAim(Quantity.Stringiness, at.Now with { Body = _end.Body }));
            _end = _end.With(Quantity.Body, at.DoseForAim(Quantity.Body, _end with { Body = at.Now.Body }));
        }

        _over = (at.Over(Quantity.Body, at.Now), at.Over(Quantity.Stringiness, at.Now));
        _needs = [.. NeedParts.Select(part => StringDoseWanted(_end.Body, part))];
    }

    private Percentage Risk => Percentage.FromFraction(_risk);

    /// <inheritdoc/>
    public override Addition? Choose()
    {
        var (body, strings) = (Consider(Quantity.Body), Consider(Quantity.Stringiness));
        if (body is null || strings is null)
        {
            return body ?? strings;
        }

        if (Math.Max(body.BestChance, strings.BestChance) >= WorthAiming)
        {
            return body.BestChance >= strings.BestChance ? body : strings;
        }

        return Gain(body) >= StringFirst * Gain(strings) ? body : strings;
    }

    /// <inheritdoc/>
    public override Move? InsteadOf(Addition? addition)
        => OutOfRoom() ?? (addition is null || (addition.Bound != ChoiceBound.BestChance
            && Gain(addition) < NoGain) ? Repeat() ?? Stuck() : RepeatFirst(addition));

    /// <inheritdoc/>
    public override Move Stuck() => Headroom() ?? Trade.Of(At);

    /// <inheritdoc/>
    public override Move? InsteadOfTooSmall() => Repeat();

    /// <inheritdoc/>
    public override AdviceReason Why(Addition addition)
    {
        var other = Other(addition.Quantity);
        var isStringFirst = addition is { Quantity: Quantity.Stringiness, Bound: not ChoiceBound.BestChance }
            && _end.Body.Percent - At.Now.Body.Percent > 0.05;
        return new AdviceReason.ChosenOfTwo(
            addition.Bound, addition.Quantity, Risk, (At.Thickener(addition.Quantity).Name, At.Thickener(other).Name))
        {
            IsStringFirst = isStringFirst,
        };
    }

    /// <inheritdoc/>
    public override ImmutableArray<PlannedDose?> Plan(Addition addition, double after)
    {
        PlannedDose? Of(Quantity quantity) => quantity == addition.Quantity
            ? Planned(At.DoseNow(quantity), Math.Max(_end.Of(quantity), after), after)
            : Planned(At.DoseNow(quantity), _end.Of(quantity), null);
        return [Of(Quantity.Body), Of(Quantity.Stringiness)];
    }

    /// <summary>Each addition after the first covers about as much as the one before it left; a rule of thumb for the outline.</summary>
    private static PlannedDose? Planned(double now, double end, double? first)
    {
        var left = end - now;
        if (left < 0.005)
        {
            return null;
        }

        var step = Math.Max(first is { } after ? after - now : left / 2, left / 6);
        return new(Dose.FromPercent(left), (int)Math.Clamp(Math.Ceiling((left / step) - 0.05), 1, 9));
    }

    private static Quantity Other(Quantity quantity) => quantity == Quantity.Body ? Quantity.Stringiness : Quantity.Body;

    /// <summary>A reading in place of an addition that would be small only because the string is not known well enough.</summary>
    private Move? RepeatFirst(Addition addition)
    {
        var isBoundByString = addition.Bound == ChoiceBound.StringRisk
            || addition is { Bound: ChoiceBound.Room, Quantity: Quantity.Stringiness };
        return isBoundByString && !IsReadOften(Quantity.Stringiness) && Gain(addition) < SmallGain
            ? Move.ReadString(new AdviceReason.StringKeepsAdditionSmall(At.StringRepeatability))
            : null;
    }

    /// <summary>The body would pass before the string arrives: base has to go in, the sooner the less.</summary>
    private Move? OutOfRoom()
    {
        var strings = At.At(At.Now)[(int)Quantity.Stringiness];
        if (strings.InBand + strings.Over >= 0.5
            || At.Over(Quantity.Body, At.Now.With(Quantity.Stringiness, StringDoseWanted(At.Now.Body, 0.5))) < 0.5)
        {
            return null;
        }

        if (At.ReadingsOf(Quantity.Stringiness) < StringsBeforeBase)
        {
            return Move.ReadString(new AdviceReason.BodyMayPass());
        }

        var wanted = _end.Strings.Percent - At.Now.Strings.Percent;
        return new LetDowns(At, Settings).Where(
            doses => At.Median(Quantity.Body, doses.With(Quantity.Stringiness, At.DoseForAim(Quantity.Stringiness, doses)))
                <= At.Aim(Quantity.Body).Middle,
            new AdviceReason.BodyWouldPass(Dose.FromPercent(wanted), At.Thickener(Quantity.Stringiness).Name))
            ?? Move.GiveUp(Remedy.OneOfTwo, Trade.Of(At).Why);
    }

    /// <summary>The string stands so high that no body thickener can follow: base makes room for it; null where it does not.</summary>
    private Move? Headroom()
    {
        var body = At.At(At.Now)[(int)Quantity.Body];
        if (body.InBand + body.Over >= 0.5 || At.Over(Quantity.Stringiness, At.Now with { Body = _end.Body }) <= At.Request.Risk.Fraction)
        {
            return null;
        }

        var aim = At.Aim(Quantity.Stringiness);
        return new LetDowns(At, Settings).Where(
            doses => At.Median(Quantity.Stringiness, doses.With(Quantity.Body, At.DoseForAim(Quantity.Body, doses)))
                <= aim.Middle - ((aim.High - aim.Middle) / 4),
            new AdviceReason.StringWouldPass(Dose.FromPercent(_end.Body.Percent - At.Now.Body.Percent), At.Thickener(Quantity.Body).Name));
    }

    /// <summary>The dose of the string thickener that is enough for the string's band with a chance, at a dose of the other.</summary>
    private double StringDoseWanted(Dose body, double chance)
    {
        var (from, aim) = (At.Now with { Body = body }, At.Aim(Quantity.Stringiness));
        return At.First(Quantity.Stringiness, from, x =>
             At.Posterior.At(from.With(Quantity.Stringiness, x), Quantity.Stringiness).ChanceAbove((aim.Low + aim.Middle) / 2) >= chance);
    }

    /// <summary>How much of the way to its aim an addition covers, in half widths of the band.</summary>
    private double Gain(Addition addition)
    {
        var (quantity, aim) = (addition.Quantity, At.Aim(addition.Quantity));
        var isString = quantity == Quantity.Stringiness;
        var from = isString ? At.Now : At.Now with { Strings = _end.Strings };
        double Median(double x) => At.Median(quantity, from.With(quantity, x));
        return (Math.Min(Median(addition.DosePercent), aim.Middle) - Median(At.DoseNow(quantity)))
            / ((aim.High - aim.Middle) / (isString ? 2 : 1));
    }

    private Addition? Consider(Quantity quantity)
    {
        var (now, limit) = (At.DoseNow(quantity), At.Limit(quantity).Dose.Percent);
        var cap = now + (IncrementPolicy.StepCap * At.Thickener(quantity).UsualRange.Top.Percent);
        var most = Math.Min(cap, limit);
        if (most <= now)
        {
            return null;
        }

        var (ceiling, bound) = Ceiling(quantity, now, most);
        if (ceiling <= now)
        {
            return null;
        }

        var (best, bestChance) = (ceiling, -1.0);
        for (var i = 1; i <= Candidates; i++)
        {
            var dose = now + ((ceiling - now) * i / Candidates);
            var both = At.AllInBand(At.Now.With(quantity, dose));
            (best, bestChance) = both > bestChance + 1e-9 ? (dose, both) : (best, bestChance);
        }

        return bestChance >= WorthAiming && best < ceiling
            ? new(quantity, best, bestChance, ChoiceBound.BestChance)
            : new(quantity, ceiling, bestChance, bound ?? (limit <= cap ? ChoiceBound.Limit : ChoiceBound.StepCap));
    }

    /// <summary>The largest dose up to which every dose on the way is allowed, and what forbids more.</summary>
    private (double Dose, ChoiceBound? Bound) Ceiling(Quantity quantity, double now, double most)
    {
        ChoiceBound? forbids = null;
        bool IsForbidden(double dose)
        {
            var bound = Forbidden(quantity, At.Now.With(quantity, dose));
            forbids = bound ?? forbids;
            return bound is not null;
        }

        return (Threshold.Of(now, most, IsForbidden, Candidates, 8).Before, forbids);
    }

    /// <summary>What stands already can't be undone by adding nothing; only what an addition brings on top counts against its
    /// risk.</summary>
    private static double Added(double after, double before) => Math.Max(0, after - before);

    private ChoiceBound? Forbidden(Quantity quantity, Doses doses)
    {
        var (body, strings) = (At.Over(Quantity.Body, doses), At.Over(Quantity.Stringiness, doses));
        if (Added(body, _over.Body) + Added(strings, _over.Strings) > _risk || body + strings - (body * strings) > MostRisk * _risk)
        {
            return body >= strings ? ChoiceBound.BodyRisk : ChoiceBound.StringRisk;
        }

        var stuck = quantity == Quantity.Stringiness
            ? At.Over(Quantity.Stringiness, doses with { Body = Larger(_end.Body, doses.Body) })
            : _needs.Average(need => At.Over(Quantity.Body, doses.With(Quantity.Stringiness, Math.Max(need, doses.Strings.Percent))));
        return stuck > Math.Max(_risk, RoomRisk) ? ChoiceBound.Room : null;
    }

    private static Dose Larger(Dose left, Dose right) => left > right ? left : right;
}
