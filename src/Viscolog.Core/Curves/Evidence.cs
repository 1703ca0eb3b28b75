using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Curves;

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
