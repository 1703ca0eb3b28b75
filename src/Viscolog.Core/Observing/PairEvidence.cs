using System.Collections.Immutable;
using Viscolog.Core.Pots;

namespace Viscolog.Core.Observing;

/// <summary>What a run says of body and string over the doses of two thickeners.</summary>
public sealed record PairEvidence
{
    /// <summary>Relative standard deviation of repeat string readings (from memory).</summary>
    private const double DefaultStringRepeatability = 0.2;

    /// <summary>A ruler tells a string to so many mm (common practice).</summary>
    private const double RulerMillimeters = 0.5;

    private PairEvidence(Run run, PairRoles roles, ImmutableArray<PairStep> steps, ImmutableArray<string> warnings, double? lowPh)
        => (Run, Roles, Steps, Warnings, LowPh) = (run, roles, steps, warnings, lowPh);

    /// <summary>The run.</summary>
    public Run Run { get; }

    /// <summary>Which thickener does what.</summary>
    public PairRoles Roles { get; }

    /// <summary>What a reader of the results must know.</summary>
    public ImmutableArray<string> Warnings { get; }

    /// <summary>Number of readings of body in use.</summary>
    public int BodyReadings => Steps.Sum(s => s.Body.Readings.Length);

    /// <summary>Number of readings of string in use.</summary>
    public int StringReadings => Steps.Sum(s => s.Strings.Length);

    /// <summary>The last pH where it is too low for a thickener; else null.</summary>
    internal double? LowPh { get; }

    /// <summary>The steps in order of time; the last may have no reading yet.</summary>
    internal ImmutableArray<PairStep> Steps { get; }

    /// <summary>Top of the body thickener's usual range in %.</summary>
    internal double BodyTop => Roles.BodyThickener.UsualRange.Top.Percent;

    /// <summary>Top of the string thickener's usual range in %.</summary>
    internal double StringTop => Roles.StringThickener.UsualRange.Top.Percent;

    /// <summary>Repeatability of the body on the ln scale.</summary>
    internal double Repeatability => Run.RepeatabilityInForce.Fraction;

    /// <summary>Repeatability of the string on the ln scale: the default until the run's own repeats tell.</summary>
    internal double StringRepeatability
    {
        get
        {
            var (deviation, freedom) = LearnedRepeatability.Pooled(Steps.Select(s => s.Strings.Select(r => r.Ln).ToArray()));
            return freedom < LearnedRepeatability.Enough ? DefaultStringRepeatability : Math.Max(DefaultStringRepeatability / 4, deviation);
        }
    }

    /// <summary>Takes the evidence out of a run.</summary>
    /// <param name="run">The run; it names two thickeners.</param>
    public static PairEvidenceOutcome Of(Run run)
    {
        if (PairRoles.Of(run) is not { } roles)
        {
            return new PairEvidenceOutcome.Unusable("body and string together need two thickeners in the run's header, no more and no fewer");
        }

        if (ShearConditions.Mixture(run) is { } mixture)
        {
            return new PairEvidenceOutcome.Unusable(mixture);
        }

        var collector = new EvidenceCollector(run);
        var bodies = collector.Collect(roles.BodyThickener);
        if (collector.Trouble is { } trouble)
        {
            return new PairEvidenceOutcome.Unusable(trouble);
        }

        ImmutableArray<PairStep> steps =
        [
            .. Pots.Steps.Of(run).Select((step, place) => new PairStep(bodies[place], step.Pot.DoseOf(roles.StringThickener.Name).Percent, [.. step.Readings.Select(Read).OfType<StringReading>()])),
        ];
        var warnings = collector.Warnings.AddRange(collector.NotesOn(roles.StringThickener));
        return new PairEvidenceOutcome.Usable(new(run, roles, steps, warnings, collector.LowPh(roles.BodyThickener) ?? collector.LowPh(roles.StringThickener)));
    }

    private static StringReading? Read(PlacedReading placed)
    {
        if (placed.Reading.StringLength is not { } length)
        {
            return null;
        }

        var counted = Math.Max(length.Millimeters, RulerMillimeters);
        var ruler = RulerMillimeters / counted;
        return new(placed.Entry, Math.Log(counted), ruler * ruler);
    }
}

/// <summary>Whether a run's readings can carry the curves of two thickeners. The set of cases is closed.</summary>
public abstract record PairEvidenceOutcome
{
    private protected PairEvidenceOutcome()
    {
    }

    /// <summary>They can.</summary>
    /// <param name="Evidence">What they say.</param>
    public sealed record Usable(PairEvidence Evidence) : PairEvidenceOutcome;

    /// <summary>They can't.</summary>
    /// <param name="Reason">Why, and what to do.</param>
    public sealed record Unusable(string Reason) : PairEvidenceOutcome;
}

/// <summary>A step of a run with two thickeners.</summary>
/// <param name="Body">The step as the body's curve sees it; its dose is that of the thickener that makes the body.</param>
/// <param name="StringDose">Dose of the thickener that brings the string, in g per 100 g of base.</param>
/// <param name="Strings">Readings of string, in order.</param>
internal sealed record PairStep(EvidenceStep Body, double StringDose, ImmutableArray<StringReading> Strings);

/// <summary>A reading of string as the posterior sees it.</summary>
/// <param name="Entry">The place of its entry in the run, from 0.</param>
/// <param name="Ln">ln of the length in mm; a string too short to measure counts as the ruler's least.</param>
/// <param name="ExtraVariance">Variance in ln units beyond the repeatability: what the ruler can't tell.</param>
internal sealed record StringReading(int Entry, double Ln, double ExtraVariance);
