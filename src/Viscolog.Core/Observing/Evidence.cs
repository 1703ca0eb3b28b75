using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Observing;

/// <summary>
/// What a run says of body, and with two thickeners of string, over the doses: readings brought to the reference temperature.
/// </summary>
public sealed record Evidence
{
    /// <summary>Relative standard deviation of repeat string readings (from memory).</summary>
    private const double DefaultStringRepeatability = 0.2;

    private Evidence(Run run, Thickener thickener, ImmutableArray<EvidenceStep> steps, EvidenceCollector collector)
        => (Run, Thickener, Steps, Warnings, LowPh, CoefficientUsed) = (
            run,
            thickener,
            steps,
            collector.Warnings,
            collector.LowPh(thickener),
            collector.CoefficientUsed);

    /// <summary>The run.</summary>
    public Run Run { get; }

    /// <summary>The thickener that makes the body.</summary>
    public Thickener Thickener { get; }

    /// <summary>The thickener that brings the string; null where the evidence is of one thickener.</summary>
    public Thickener? StringThickener { get; private init; }

    /// <summary>Which of two thickeners does what.</summary>
    /// <exception cref="InvalidOperationException">The evidence is of one thickener.</exception>
    public PairRoles Roles
        => StringThickener is { } other ? new(Thickener, other) : throw new InvalidOperationException("the evidence is of one thickener");

    /// <summary>What a reader of the results must know.</summary>
    public ImmutableArray<EvidenceWarning> Warnings { get; private init; }

    /// <summary>Number of readings of the body in use.</summary>
    public int ReadingCount => Steps.Sum(s => s.Readings.Length);

    /// <summary>Number of readings of the string in use; 0 with one thickener.</summary>
    public int StringCount => Steps.Sum(s => s.Strings.Length);

    /// <summary>The last pH where it is too low for a thickener; else null.</summary>
    internal double? LowPh { get; private init; }

    /// <summary>The steps in order of time; the last may have no reading yet.</summary>
    internal ImmutableArray<EvidenceStep> Steps { get; }

    /// <summary>Top of the usual range of the thickener that makes the body in %, the unit of dose in the shapes.</summary>
    internal double RangeTop => Thickener.UsualRange.Top.Percent;

    /// <summary>Top of the usual range of the thickener that brings the string in %.</summary>
    internal double StringTop => Roles.StringThickener.UsualRange.Top.Percent;

    /// <summary>The greatest dose in % that was read.</summary>
    internal double ReadUpTo => Steps.Where(s => s.Readings.Length > 0).Select(s => s.Dose).DefaultIfEmpty(0).Max();

    /// <summary>Repeatability of the body on the ln scale.</summary>
    internal double Repeatability => Run.RepeatabilityInForce.Fraction;

    /// <summary>
    /// Mean and standard deviation of its logarithm over that before this run's readings. A default is what a practised hand has, others
    /// scatter by up to three times as much; a stated or learned one is good to a fifth (rules of this project, drawn over published
    /// repeatabilities of 1 to 11 % within a laboratory).
    /// </summary>
    internal (double Mean, double Sd) LnRepeatabilityOff => Run.Repeatability is null ? (0.28, 0.6) : (0, 0.2);

    /// <summary>The temperature coefficient in K that the readings were corrected with.</summary>
    internal double CoefficientUsed { get; }

    /// <summary>Repeatability of the string on the ln scale: the default until the run's own repeats tell.</summary>
    internal double StringRepeatability
    {
        get
        {
            var (deviation, freedom) = LearnedRepeatability.Pooled(Steps.Select(s => s.Strings.Select(r => r.Ln).ToArray()));
            return freedom < LearnedRepeatability.Enough ? DefaultStringRepeatability : Math.Max(DefaultStringRepeatability / 4, deviation);
        }
    }

    /// <summary>Takes the evidence of one thickener's curve out of a run.</summary>
    /// <param name="run">The run; every step but the first holds a reading.</param>
    /// <param name="thickener">One of the run's thickeners.</param>
    public static EvidenceOutcome Of(Run run, Thickener thickener)
    {
        if (ShearConditions.Of(run) is { Length: > 1 } mixed)
        {
            return new EvidenceOutcome.Unusable(new EvidenceTrouble.MixedConditions(mixed));
        }

        var other = run.Thickeners.FirstOrDefault(t => t.Name != thickener.Name && run.PotNow().In(t.Name) > Mass.None);
        if (other is not null)
        {
            return new EvidenceOutcome.Unusable(new EvidenceTrouble.AnotherThickener(other.Name, thickener.Name));
        }

        var collector = new EvidenceCollector(run);
        var steps = collector.Collect(thickener, null);
        return (TooMany(steps) ?? collector.Trouble) is { } trouble
            ? new EvidenceOutcome.Unusable(trouble)
            : new EvidenceOutcome.Usable(new(run, thickener, steps, collector));
    }

    /// <summary>Takes the evidence of body and string over the doses of two thickeners out of a run.</summary>
    /// <param name="run">The run; it names two thickeners.</param>
    public static EvidenceOutcome OfPair(Run run)
    {
        if (PairRoles.Of(run) is not var (body, strings))
        {
            return new EvidenceOutcome.Unusable(new EvidenceTrouble.NotTwoThickeners());
        }

        if (ShearConditions.Of(run) is { Length: > 1 } mixed)
        {
            return new EvidenceOutcome.Unusable(new EvidenceTrouble.MixedConditions(mixed));
        }

        var collector = new EvidenceCollector(run);
        var steps = collector.Collect(body, strings);
        return (TooMany(steps) ?? collector.Trouble) is { } trouble
            ? new EvidenceOutcome.Unusable(trouble)
            : new EvidenceOutcome.Usable(new(run, body, steps, collector)
            {
                StringThickener = strings,
                Warnings = collector.Warnings.AddRange(collector.NotesOn(strings)),
                LowPh = collector.LowPh(body) ?? collector.LowPh(strings),
            });
    }

    private static EvidenceTrouble.TooManySteps? TooMany(ImmutableArray<EvidenceStep> steps)
        => steps.Length > Thinning.MostSteps ? new EvidenceTrouble.TooManySteps(steps.Length, Thinning.MostSteps) : null;

    /// <summary>The thickener that the run is about: the one dosed, or the first named.</summary>
    /// <returns>Null where the run names none.</returns>
    public static Thickener? MainThickener(Run run) => MainThickener(run, run.PotNow());

    /// <summary>The thickener that a run is about once its pot holds what it holds.</summary>
    internal static Thickener? MainThickener(Run run, Pot pot)
        => run.Thickeners.FirstOrDefault(t => pot.In(t.Name) > Mass.None) ?? run.Thickeners.FirstOrDefault();

    /// <summary>The doses of a step over their range tops, added up.</summary>
    internal double RangesAt(EvidenceStep step)
        => (step.Dose / RangeTop) + (StringThickener is null ? 0 : step.Doses.Strings.Percent / StringTop);
}

/// <summary>Whether a run's readings can carry a curve. The set of cases is closed.</summary>
public abstract record EvidenceOutcome
{
    private protected EvidenceOutcome()
    {
    }

    /// <summary>They can.</summary>
    /// <param name="Evidence">What they say.</param>
    public sealed record Usable(Evidence Evidence) : EvidenceOutcome;

    /// <summary>They can't.</summary>
    /// <param name="Reason">Why.</param>
    public sealed record Unusable(EvidenceTrouble Reason) : EvidenceOutcome;
}

/// <summary>A step as the posterior sees it.</summary>
/// <param name="Place">The step's place in the run, from 0.</param>
/// <param name="Doses">The doses in the pot.</param>
/// <param name="Readings">Readings of the body, in order; may be empty.</param>
/// <param name="Strings">Readings of the string, in order; empty with one thickener.</param>
/// <param name="LeftOut">Readings of a body that were left out, too far from the reference temperature.</param>
internal sealed record EvidenceStep(
    int Place, Doses Doses, ImmutableArray<BodyReading> Readings, ImmutableArray<StringReading> Strings, int LeftOut)
{
    /// <summary>Dose of the thickener that makes the body, in %.</summary>
    public double Dose => Doses.Body.Percent;
}

/// <summary>A reading of string as the posterior sees it.</summary>
/// <param name="Entry">The place of its entry in the run, from 0.</param>
/// <param name="Ln">ln of the length in mm; a string too short to measure counts as the ruler's least.</param>
/// <param name="ExtraVariance">Variance in ln units beyond the repeatability: what the ruler can't tell.</param>
internal sealed record StringReading(int Entry, double Ln, double ExtraVariance);
