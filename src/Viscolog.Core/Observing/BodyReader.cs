using System.Collections.Immutable;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Observing;

/// <summary>Turns a run's readings into bodies by the run's method, and notes what a reader must know of that.</summary>
internal sealed class BodyReader(Run run)
{
    private readonly List<string> _refusals = [];
    private readonly List<string> _cautions = [];
    private int _lastRead = -1;
    private int _lastRefused = -1;
    private string? _lastReason;

    /// <summary>The liquid's temperature coefficient: entered, else learned from readings of one dose, else the default.</summary>
    public TemperatureCoefficient Coefficient { get; } = run.Setup.TemperatureCoefficient ?? Learned(run) ?? TemperatureCoefficient.Default;

    /// <summary>Where the coefficient comes from.</summary>
    public string CoefficientWords => run.Setup.TemperatureCoefficient is not null
        ? "the coefficient of the run"
        : Coefficient == TemperatureCoefficient.Default
            ? "a default coefficient"
            : FormattableString.Invariant($"a coefficient learned from this run ({Coefficient.Kelvin:0} K)");

    /// <summary>Why the readings can't carry a curve: nothing of the last step that was read could be converted.</summary>
    public string? Trouble
        => _lastRefused > _lastRead
            ? _lastReason + (Cups.Find(run.MethodInForce) is null ? "" : "; a run keeps to one cup, so pick it by the target")
            : null;

    /// <summary>What a reader of the results must know.</summary>
    public ImmutableArray<string> Warnings
    {
        get
        {
            var readings = _refusals.Count == 1 ? "1 reading" : FormattableString.Invariant($"{_refusals.Count} readings");
            string[] left = _refusals.Count == 0 ? [] : [$"{readings} left out: {_refusals[^1]}"];
            string[] target = TargetBeyondCup() is { } words ? [words] : [];
            return [.. left, .. target, .. _cautions.Distinct(StringComparer.Ordinal)];
        }
    }

    /// <summary>
    /// The body of a reading and the standard deviation of its ln beyond the repeatability; null where it has no value or can't be
    /// converted.
    /// </summary>
    public (Viscosity Body, double Sd)? Read(Reading reading, int step)
    {
        if (reading.Value is not { } value)
        {
            return null;
        }

        switch (Conversions.ToBody(run.MethodInForce, value, run.Setup, run.Base.Density))
        {
            case Conversion.Converted { Reading: { Body: { } body } converted }:
                _lastRead = step;
                _cautions.AddRange(converted.Warnings.Select(ReadingSentences.Of));
                if (converted.YieldStress is not null)
                {
                    _cautions.Add("bodies are yield stresses over 1/s: 1 Pa counts as 1000 mPa·s (see docs/science.md, section 10)");
                }

                return (body, double.Hypot(converted.ReadingUncertainty.Fraction, MoreScatter(converted.Repeatability)));
            case Conversion.Refused refused:
                _lastRefused = step;
                _lastReason = ReadingSentences.Of(refused.Reason);
                _refusals.Add(_lastReason);
                return null;
            default:
                return null;
        }
    }

    /// <summary>
    /// What this reading scatters beyond the repeatability of the run: the default is that of the middle of the method's range; one that
    /// is stated or learned is the run's own.
    /// </summary>
    private double MoreScatter(Percentage here)
    {
        var usual = run.RepeatabilityInForce.Fraction;
        return run.Repeatability is null ? Math.Sqrt(Math.Max(0, (here.Fraction * here.Fraction) - (usual * usual))) : 0;
    }

    private string? TargetBeyondCup()
    {
        if (Cups.Find(run.MethodInForce) is not { } cup || run.Base.Density is not { } density || run.Target is not { } target)
        {
            return null;
        }

        var wanted = KinematicViscosity.FromSquareMillimetersPerSecond(target.Band.Aim.MilliPascalSeconds / density.GramsPerMilliliter);
        var instead = Cups.Fitting(wanted, cup.Series) is { } other
            ? $"{other.Name} ({other.Id}) fits it"
            : "no cup fits it, a rotational viscometer would";
        return cup.Allows(cup.TimeFor(wanted)) ? null : $"the target can't be read with {cup.Name}; {instead}";
    }

    /// <summary>Readings of one dose at different temperatures, each step a liquid of its own.</summary>
    private static TemperatureCoefficient? Learned(Run run)
    {
        var liquids = Steps.Of(run).Select((step, place) => step.Readings
            .Where(r => r.Reading is { Temperature: not null, Value: not null }
                && Settled.WaitSeconds(place == 0, r.Reading.Wait) >= Settled.Seconds)
            .Select(r => (At: r.Reading.Temperature!.Value,
                Conversion: Conversions.ToBody(run.MethodInForce, r.Reading.Value!, run.Setup, run.Base.Density) as Conversion.Converted))
            .Where(r => r.Conversion is not null)
            .Select(r => (r.At, r.Conversion!.Reading.Body!.Value))
            .ToArray());
        return run.RepeatabilityInForce.Fraction > 0 ? TemperatureCoefficient.Learned(liquids, run.RepeatabilityInForce) : null;
    }
}

/// <summary>A reading as the curve sees it.</summary>
/// <param name="Entry">The place of its entry in the run, from 0.</param>
/// <param name="Step">The place of its step in the evidence, from 0.</param>
/// <param name="WaitSeconds">Standing time in s; infinity where it counts as settled.</param>
/// <param name="Ln">ln of the viscosity in mPa·s at the reference temperature.</param>
/// <param name="ExtraVariance">Variance in ln units beyond the method's repeatability (temperature correction, water added later).</param>
internal sealed record BodyReading(int Entry, int Step, double WaitSeconds, double Ln, double ExtraVariance);
