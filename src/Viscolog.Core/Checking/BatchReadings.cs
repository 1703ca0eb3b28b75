using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Checking;

/// <summary>The readings of a batch as it is now: those of its last step that stood long enough.</summary>
internal sealed class BatchReadings
{
    /// <summary>So many standard deviations over the band a pot that still builds is over already.</summary>
    private const double SurelyOver = 3;

    private readonly Run _run;
    private readonly BodyReader _reader;
    private readonly Step _step;
    private readonly int _place;
    private readonly Posterior? _posterior;

    /// <summary>Takes the readings of a run's last step.</summary>
    /// <param name="run">The run, its repeatability as it counts.</param>
    /// <param name="posterior">The posterior in its curve; null where there is none.</param>
    public BatchReadings(Run run, Posterior? posterior)
    {
        (_run, _posterior) = (run, posterior);
        _reader = new(run);
        var steps = Steps.Of(run);
        (_step, _place) = (steps[^1], steps.Length - 1);
        ImmutableArray<(CountedReading Reading, double Wait)> all =
            [.. _step.Readings.Select(r => Read(r.Reading)).OfType<(CountedReading, double)>()];
        (All, Counted) = (all.Length, Counting(all));
        if (all.Length > 0 && Counted.IsEmpty)
        {
            MoreWait = WaitFor(all[^1].Wait);
        }

        if (Counted.IsEmpty && run.Target is { } target && all.Length > 0
            && all.All(r => r.Reading.Ln - (SurelyOver * run.RepeatabilityInForce.Fraction) > target.Band.High.Ln))
        {
            (Counted, MoreWait) = ([.. all.Select(r => r.Reading)], null);
        }
    }

    /// <summary>Readings of a body in the last step.</summary>
    public int All { get; }

    /// <summary>Those of a body that count.</summary>
    public ImmutableArray<CountedReading> Counted { get; }

    /// <summary>How much longer to wait where readings are there but none has settled; null elsewhere.</summary>
    public TimeSpan? MoreWait { get; }

    /// <summary>Whether the readings fall over time, which is not settling.</summary>
    public bool Falls => EvidenceStep is { Readings.Length: > 1 } read && new StepChecks(_posterior!, read).Falls;

    /// <summary>Readings too far from the reference temperature.</summary>
    public int TooFar { get; private set; }

    /// <summary>Why nothing of the last step could be converted; null where something could.</summary>
    public EvidenceTrouble? Trouble => _reader.Trouble;

    /// <summary>What a reader must know.</summary>
    public IEnumerable<EvidenceWarning> Warnings => _reader.Warnings;

    /// <summary>What readings are brought to the reference temperature by.</summary>
    public CoefficientInUse Coefficient => _reader.InUse;

    /// <summary>The readings of the pot as it is now, whatever they read.</summary>
    public IEnumerable<Reading> OfPot => _step.Readings.Select(r => r.Reading);

    private EvidenceStep? EvidenceStep => _posterior?.Evidence.Steps[^1] is { } last && last.Place == _place
        && last.Readings.Length > 0 ? last : null;

    private (CountedReading Reading, double Wait)? Read(Reading reading)
    {
        if (_reader.Read(reading, _place) is not var (body, own))
        {
            return null;
        }

        var reference = _run.ReferenceTemperatureInForce;
        var at = reading.Temperature ?? reference;
        if (Math.Abs(at.Celsius - reference.Celsius) > TemperatureCorrection.GreatestDistance)
        {
            TooFar++;
            return null;
        }

        var (shift, sd) = TemperatureCorrection.LnShift(at, reference, _reader.InUse.Coefficient);
        var calibration = Conversions.ToBody(_run.MethodInForce, reading.Value!, _run.Setup, _run.Base.Density)
            is Conversion.Converted converted
            ? converted.Reading.CalibrationUncertainty.Fraction
            : 0;
        var wait = Settled.WaitSeconds(_place == 0, reading.Wait);
        var slope = _reader.InUse.Coefficient.Kelvin / (at.Kelvin * at.Kelvin);
        return (new(body.Ln + shift, own, calibration, slope, at > reference
            ? sd : -sd, reading.Temperature is not null, Remaining(wait)), wait);
    }

    /// <summary>Expected build-up still to come after a standing time, in ln units; without a posterior, nothing after six usual time
    /// constants.</summary>
    private double Remaining(double wait)
        => double.IsInfinity(wait) ? 0
            : EvidenceStep is { } known ? BuildUp.ExpectedRemaining(_posterior!.ChangesIn(known), _posterior.Kinetics(), wait)
            : wait >= Settled.SecondsIn(_run) ? 0 : double.PositiveInfinity;

    /// <summary>
    /// Whether a reading has stood as long as is usual for its thickener while the step does not rise by more than it scatters, or as long
    /// as the posterior asks. What may still come counts as doubt, up to the bound of what counts as settled.
    /// </summary>
    private bool HasSettled(double wait, double bound, bool isRising)
        => double.IsInfinity(wait) || (!isRising && wait >= Settled.SecondsIn(_run)) || (EvidenceStep is { } known
            && wait >= BuildUp.WaitUntilBelow(_posterior!.ChangesIn(known), _posterior.Kinetics(), bound));

    /// <summary>Those that have settled; else the last two where they agree though time lay between them.</summary>
    private ImmutableArray<CountedReading> Counting(ImmutableArray<(CountedReading Reading, double Wait)> all)
    {
        var repeatability = _run.RepeatabilityInForce.Fraction;
        var bound = Settled.Bound(repeatability);
        var isRising = all.Length > 1 && Settled.IsBeyondScatter(all[^1].Reading.Ln - all[0].Reading.Ln, repeatability);
        ImmutableArray<CountedReading> settled =
        [
            .. all.Where(r => HasSettled(r.Wait, bound, isRising))
                .Select(r => r.Reading with { Remaining = Math.Min(r.Reading.Remaining, bound) }),
        ];
        if (settled.Length > 0 || all.Length < 2)
        {
            return settled;
        }

        // What two agreeing readings leave open is what could still hide in their scatter.
        var last = all[^1];
        ImmutableArray<CountedReading> agreeing =
        [
            .. all.Where(r => Settled.TwoAgree((r.Wait, r.Reading.Ln), (last.Wait, last.Reading.Ln), repeatability)).Append(last)
                .Select(r => r.Reading with { Remaining = bound }),
        ];
        return agreeing.Length > 1 ? agreeing : [];
    }

    private TimeSpan WaitFor(double stood)
    {
        if (EvidenceStep is not { } known)
        {
            return TimeSpan.FromSeconds(Math.Max(BuildUp.LeastWaitSeconds, Settled.SecondsIn(_run) - stood));
        }

        var (changes, times) = (_posterior!.ChangesIn(known), _posterior.Kinetics());
        return TimeSpan.FromSeconds(Settled.After(changes, times, stood, _run.RepeatabilityInForce.Fraction).MoreWaitSeconds);
    }
}

/// <summary>A reading of the pot as it is now, brought to the reference temperature.</summary>
/// <param name="Ln">ln body in mPa·s.</param>
/// <param name="Own">Standard uncertainty of this very reading beyond the repeatability, in ln units.</param>
/// <param name="Calibration">What the method's own formula leaves open, in ln units.</param>
/// <param name="LnPerCelsius">How its ln body changes with the temperature of the pot, at the reading's temperature.</param>
/// <param name="ShiftSd">Standard deviation of the temperature correction with its sign, shared through the coefficient.</param>
/// <param name="HasTemperature">Whether its temperature was read.</param>
/// <param name="Remaining">Expected build-up still to come, in ln units.</param>
internal sealed record CountedReading(
    double Ln, double Own, double Calibration, double LnPerCelsius, double ShiftSd, bool HasTemperature, double Remaining);
