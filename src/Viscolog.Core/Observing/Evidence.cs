using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Observing;

/// <summary>What a run says of one thickener's dose–response curve: doses and readings, brought to the reference temperature.</summary>
public sealed record Evidence
{
    private Evidence(Run run, Thickener thickener, ImmutableArray<EvidenceStep> steps, EvidenceCollector collector)
        => (Run, Thickener, Steps, Warnings, LowPh) = (run, thickener, steps, collector.Warnings, collector.LowPh(thickener));

    /// <summary>The run.</summary>
    public Run Run { get; }

    /// <summary>The thickener whose dose is the axis.</summary>
    public Thickener Thickener { get; }

    /// <summary>What a reader of the results must know.</summary>
    public ImmutableArray<string> Warnings { get; }

    /// <summary>Number of readings in use.</summary>
    public int ReadingCount => Steps.Sum(s => s.Readings.Length);

    /// <summary>The last pH where it is too low for the thickener; else null.</summary>
    internal double? LowPh { get; }

    /// <summary>The steps in order of time; the last may have no reading yet.</summary>
    internal ImmutableArray<EvidenceStep> Steps { get; }

    /// <summary>Top of the usual range in %, the unit of dose in the shapes.</summary>
    internal double RangeTop => Thickener.UsualRange.Top.Percent;

    /// <summary>The greatest dose in % that was read.</summary>
    internal double ReadUpTo => Steps.Where(s => s.Readings.Length > 0).Select(s => s.Dose).DefaultIfEmpty(0).Max();

    /// <summary>Repeatability on the ln scale.</summary>
    internal double Repeatability => Run.RepeatabilityInForce.Fraction;

    /// <summary>Takes the evidence out of a run.</summary>
    /// <param name="run">The run; every step but the first holds a reading.</param>
    /// <param name="thickener">One of the run's thickeners.</param>
    public static EvidenceOutcome Of(Run run, Thickener thickener)
    {
        if (ShearConditions.Mixture(run) is { } mixture)
        {
            return new EvidenceOutcome.Unusable(mixture);
        }

        var other = run.Thickeners.FirstOrDefault(t => t.Name != thickener.Name && run.PotNow().In(t.Name) > Mass.None);
        if (other is not null)
        {
            return new EvidenceOutcome.Unusable(
                $"the pot holds '{other.Name}' beside '{thickener.Name}'; one curve can't hold both: state target_string_mm for advice on body and string together, or keep one thickener a run");
        }

        var collector = new EvidenceCollector(run);
        var steps = collector.Collect(thickener);
        return collector.Trouble is { } trouble
            ? new EvidenceOutcome.Unusable(trouble)
            : new EvidenceOutcome.Usable(new(run, thickener, steps, collector));
    }

    /// <summary>The thickener that the run is about: the one dosed, or the first named.</summary>
    /// <returns>Null where the run names none.</returns>
    public static Thickener? MainThickener(Run run)
        => run.Thickeners.FirstOrDefault(t => run.PotNow().In(t.Name) > Mass.None) ?? run.Thickeners.FirstOrDefault();
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
    /// <param name="Reason">Why, and what to do.</param>
    public sealed record Unusable(string Reason) : EvidenceOutcome;
}

/// <summary>A step as the curve sees it.</summary>
/// <param name="Place">The step's place in the run, from 0.</param>
/// <param name="Dose">Dose in g per 100 g of base.</param>
/// <param name="Readings">Its readings, in order; may be empty.</param>
/// <param name="LeftOut">Readings of a body that were left out, too far from the reference temperature.</param>
internal sealed record EvidenceStep(int Place, double Dose, ImmutableArray<BodyReading> Readings, int LeftOut);
