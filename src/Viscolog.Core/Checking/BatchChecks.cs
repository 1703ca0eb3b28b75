using System.Collections.Immutable;
using Viscolog.Core.Inference;
using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>The one call behind every check of a batch: run, specification and history in, verdict and next step out.
/// Deterministic.</summary>
public static class BatchChecks
{
    /// <summary>Beyond so many times, or under that part of, the oil's viscosity its bias is doubted (a rule of this project).</summary>
    private const double FarFactor = 10;

    /// <summary>Checks a batch.</summary>
    /// <param name="request">The batch, its specification, and what the bench knows.</param>
    public static CheckOutcome Of(CheckRequest request)
    {
        var specification = request.Specification;
        var run = Prepared(request);
        if (Obstacle(run, specification) is { } reason)
        {
            return new CheckOutcome.Refused(reason);
        }

        var posterior = Evidence.MainThickener(run) is not null
            && Posteriors.OfCurve(run, specification.Body?.Band, request.History) is PosteriorOutcome.Found found
                ? found.Posterior : null;
        var readings = new BatchReadings(run, posterior);
        if (specification.Body is not null && readings.Trouble is { } trouble)
        {
            return new CheckOutcome.Refused(new CheckRefusal.NoBody(trouble));
        }

        var condition = ShearConditions.Of(run).FirstOrDefault();
        var drift = condition is null ? null : MethodDrift.Of(request.Oils, condition, run.RepeatabilityInForce);
        var values = new BatchValues(run, readings, Known(request, run), drift, request.Today);
        var body = specification.Body is { Band: var band } ? Body(band, readings.Counted.IsEmpty ? null : values.Value()) : null;
        var check = new BatchCheck(run, specification, new Verdict.Accept(), new NextStep.Release())
        {
            Body = body,
            Acidity = specification.Acidity is { } acid
                ? AcidityCheck.Of([.. readings.OfPot.Select(r => r.Acidity).OfType<Acidity>()], acid) : null,
            StringLength = specification.StringLength is { } strings
                ? StringCheck.Of([.. readings.OfPot.Select(r => r.StringLength).OfType<Length>()], strings) : null,
            Condition = condition,
            Drift = drift,
        };
        check = check with { Verdict = new Verdicts(check, readings).Decide() };
        return new CheckOutcome.Checked(check with
        {
            Next = new NextSteps(check, readings, request.History).Decide(),
            Warnings =
            [
                .. readings.Warnings.Select(w => new CheckWarning.OfReadings(w)), .. values.Warnings, .. Mismatches(request),
                .. FarOil(request, check),
            ],
        });
    }

    /// <summary>A batch's value alone; null with the reason where it tells none.</summary>
    internal static (BatchValue? Value, ValueGap? Gap) ValueOf(CheckRequest request)
    {
        var run = Prepared(request);
        if (Obstacle(run, request.Specification) is { } reason)
        {
            return (null, new ValueGap.NotChecked(reason));
        }

        var posterior = Evidence.MainThickener(run) is not null
            && Posteriors.OfCurve(run, null, []) is PosteriorOutcome.Found found ? found.Posterior : null;
        var readings = new BatchReadings(run with { Target = null }, posterior);
        var drift = ShearConditions.Of(run).FirstOrDefault() is { } condition
            ? MethodDrift.Of(request.Oils, condition, run.RepeatabilityInForce) : null;
        return readings switch
        {
            { Counted.IsEmpty: false } => (new BatchValues(run, readings, Known(request, run), drift, request.Today).Value(), null),
            { Trouble: { } trouble } => (null, new ValueGap.NotChecked(new CheckRefusal.NoBody(trouble))),
            { All: > 0 } => (null, new ValueGap.NothingSettled()),
            _ => (null, new ValueGap.NotRead()),
        };
    }

    /// <summary>The run as the specification sees it, with the repeatability that counts: its own, the bench's, learned from repeats, the
    /// default.</summary>
    private static Run Prepared(CheckRequest request)
    {
        var run = request.Run with
        {
            ReferenceTemperature = request.Specification.ReferenceTemperatureInForce,
            Target = request.Specification.Body ?? request.Run.Target,
            TargetString = request.Specification.StringLength ?? request.Run.TargetString,
            Repeatability = request.Run.Repeatability ?? request.Repeatability,
        };
        return LearnedRepeatability.Into(run, request.History);
    }

    /// <summary>How readings of the batch scatter, by what was known before they were taken.</summary>
    private static Scatter Known(CheckRequest request, Run run)
        => (request.Run.Repeatability ?? request.Repeatability) is { } stated
            ? Scatter.Stated(stated) : Scatter.Unstated(run, request.History);

    private static CheckRefusal? Obstacle(Run run, Specification specification)
    {
        if (specification is { Body: null, Acidity: null, StringLength: null })
        {
            return new CheckRefusal.AsksForNothing(specification.Name);
        }

        if (specification.Method is { } asked && asked != run.MethodInForce && specification.Body is not null)
        {
            return new CheckRefusal.OtherMethod(specification.Name, asked, run.MethodInForce);
        }

        return ShearConditions.Of(run) is { Length: > 1 } mixed ? new CheckRefusal.MixedConditions([.. mixed]) : null;
    }

    private static IEnumerable<CheckWarning> Mismatches(CheckRequest request)
    {
        var (run, specification) = (request.Run, request.Specification);
        if (specification.Base is { } @base && run.Base.Name is { } own && own != @base)
        {
            yield return new CheckWarning.OtherBase(@base, own);
        }

        if (specification.Thickener is { } thickener && run.Thickeners.Length > 0 && run.FindThickener(thickener) is null)
        {
            yield return new CheckWarning.OtherThickener(thickener);
        }
    }

    /// <summary>A bias is known at the viscosity of the oil; far from it it may be another.</summary>
    private static IEnumerable<CheckWarning> FarOil(CheckRequest request, BatchCheck check)
    {
        if (check is not { Drift: { } drift, Body.Value: { } value })
        {
            yield break;
        }

        var nearest = request.Oils.Where(o => o.Condition == drift.Condition
            && o.On == drift.LastChecked).Select(o => o.Oil.Viscosity).MinBy(v => Math.Abs(v.Ln - value.Body.Ln));
        if (Math.Abs(nearest.Ln - value.Body.Ln) > Math.Log(FarFactor))
        {
            yield return new CheckWarning.FarOil(nearest);
        }
    }

    private static BodyCheck Body(ViscosityBand band, BatchValue? value) => value is null
        ? new(null, band, null, null)
        : new(value, band, Percentage.FromFraction(value.Chance(band)), value.Accepted(band));
}

/// <summary>Whether a batch could be checked. The set of cases is closed.</summary>
public abstract record CheckOutcome
{
    private protected CheckOutcome()
    {
    }

    /// <summary>It could.</summary>
    /// <param name="Check">The result.</param>
    public sealed record Checked(BatchCheck Check) : CheckOutcome;

    /// <summary>It could not.</summary>
    /// <param name="Reason">Why.</param>
    public sealed record Refused(CheckRefusal Reason) : CheckOutcome;
}

/// <summary>What is asked of a batch.</summary>
/// <param name="Run">The batch.</param>
/// <param name="Specification">What it must meet.</param>
/// <param name="Today">The day of asking, for the age of the method's last check.</param>
public sealed record CheckRequest(Run Run, Specification Specification, DateOnly Today)
{
    /// <summary>Earlier runs, for the repeatability and for advice; those with another base or thickener are left aside.</summary>
    public ImmutableArray<Run> History { get; init; } = [];

    /// <summary>Readings of certified oils at this bench, by any method.</summary>
    public ImmutableArray<OilReading> Oils { get; init; } = [];

    /// <summary>The bench's own repeatability of the method; null where it keeps none. One that the run states goes before it.</summary>
    public Percentage? Repeatability { get; init; }
}
