using System.Collections.Immutable;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Observing;

/// <summary>Turns a run's readings into bodies by the run's method, and notes what a reader must know of that.</summary>
internal sealed class BodyReader(Run run)
{
    private readonly List<EvidenceWarning> _cautions = [];
    private int _refused;
    private int _lastRead = -1;
    private int _lastRefused = -1;
    private ConversionRefusal? _lastReason;

    /// <summary>The liquid's temperature coefficient: entered, else learned from readings of one dose, else the default.</summary>
    public CoefficientInUse InUse { get; } = run.Setup.TemperatureCoefficient is { } stated ? new(stated, CoefficientOrigin.Stated)
        : Learned(run) is { } learned ? new(learned, CoefficientOrigin.Learned)
        : new(TemperatureCoefficient.Default, CoefficientOrigin.Default);

    /// <summary>Why the readings can't carry a curve: nothing of the last step that was read could be converted.</summary>
    public EvidenceTrouble? Trouble => _lastRefused > _lastRead
        ? new EvidenceTrouble.NothingConverted(_lastReason!, Cups.Find(run.MethodInForce) is not null) : null;

    /// <summary>What a reader of the results must know.</summary>
    public ImmutableArray<EvidenceWarning> Warnings
    {
        get
        {
            EvidenceWarning?[] first =
            [
                _refused > 0 ? new EvidenceWarning.LeftOut(_refused, _lastReason!) : null,
                (EvidenceWarning?)TargetBeyondCup() ?? TargetBeyondScale(),
            ];
            return [.. first.OfType<EvidenceWarning>(), .. _cautions.Distinct()];
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
                _cautions.AddRange(converted.Warnings.Select(w => new EvidenceWarning.OfReading(w)));
                if (converted.YieldStress is not null)
                {
                    _cautions.Add(new EvidenceWarning.YieldStresses());
                }

                return (body, double.Hypot(converted.ReadingUncertainty.Fraction, MoreScatter(converted.Repeatability)));
            case Conversion.Refused refused:
                _lastRefused = step;
                _lastReason = refused.Reason;
                _refused++;
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

    /// <summary>A target that the spindle and speed of the run can't show: its torque would be beyond full scale.</summary>
    private EvidenceWarning.TargetBeyondScale? TargetBeyondScale()
        => run.Setup.PerPercentTorque is { } factor && run.Target is { } target
            && target.Band.Aim.MilliPascalSeconds > 100 * factor.MilliPascalSeconds
            ? new(Viscosity.FromMilliPascalSeconds(100 * factor.MilliPascalSeconds))
            : null;

    private EvidenceWarning.TargetBeyondCup? TargetBeyondCup()
    {
        if (Cups.Find(run.MethodInForce) is not { } cup || run.Base.Density is not { } density || run.Target is not { } target)
        {
            return null;
        }

        var wanted = KinematicViscosity.FromSquareMillimetersPerSecond(target.Band.Aim.MilliPascalSeconds / density.GramsPerMilliliter);
        return cup.Allows(cup.TimeFor(wanted)) ? null : new(cup, Cups.Fitting(wanted, cup.Series));
    }

    /// <summary>Readings of one dose at different temperatures, each step a liquid of its own.</summary>
    private static TemperatureCoefficient? Learned(Run run)
    {
        var liquids = Steps.Of(run).Select((step, place) => step.Readings
            .Where(r => r.Reading is { Temperature: not null, Value: not null }
                && Settled.WaitSeconds(place == 0, r.Reading.Wait) >= Settled.SecondsIn(run))
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
/// <param name="ExtraVariance">Variance in ln units beyond the method's repeatability: of the conversion, of water added later.</param>
internal sealed record BodyReading(int Entry, int Step, double WaitSeconds, double Ln, double ExtraVariance)
{
    /// <summary>1/T_ref − 1/T in 1/K: what a temperature coefficient counts with; 0 at the reference.</summary>
    public double Distance { get; init; }

    /// <summary>ln of the standing time.</summary>
    public double LogWait { get; } = Math.Log(WaitSeconds);
}
