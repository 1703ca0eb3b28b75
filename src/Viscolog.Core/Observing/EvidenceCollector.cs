using System.Collections.Immutable;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Observing;

/// <summary>Goes through a run's readings and notes what a reader of the results must know.</summary>
internal sealed class EvidenceCollector(Run run)
{
    /// <summary>
    /// Standard deviation in ln units for each gram of water on 100 g of base that a reading did not have yet (from memory: about a
    /// tenth of the body for 1 %).
    /// </summary>
    private const double LnSdPerWaterPercent = 0.1;

    /// <summary>Below this pH an alkali-swellable thickener's curve means nothing (from memory: activation lies at 6.5 to 7.5).</summary>
    private const double LeastPh = 7.5;

    /// <summary>A ruler tells a string to so many mm (common practice).</summary>
    private const double RulerMillimeters = 0.5;

    private readonly List<EvidenceWarning> _warnings = [];
    private readonly BodyReader _bodies = new(run);
    private int _withoutWait;
    private int _withoutTemperature;
    private int _tooFarInTemperature;
    private int _corrected;
    private double _lowestPh = double.PositiveInfinity;
    private double _highestPh = double.NegativeInfinity;
    private double? _lastPh;
    private (int Readings, int Kept) _thinned;

    public ImmutableArray<EvidenceWarning> Warnings => [.. _warnings, .. _bodies.Warnings];

    /// <summary>The temperature coefficient in K that the readings were corrected with.</summary>
    public double CoefficientUsed => _bodies.InUse.Coefficient.Kelvin;

    /// <summary>Why the readings can't carry a curve; null where they can.</summary>
    public EvidenceTrouble? Trouble => _bodies.Trouble;

    /// <summary>The last pH where it is too low for the thickener; else null.</summary>
    public double? LowPh(Thickener thickener)
        => thickener.Chemistry == ThickenerChemistry.AlkaliSwellable && _lastPh < LeastPh ? _lastPh : null;

    /// <summary>The steps over the doses of the thickener that makes the body and, with two, of the one that brings the string.</summary>
    public ImmutableArray<EvidenceStep> Collect(Thickener thickener, Thickener? strings)
    {
        var waterNow = WaterPercent(run.PotNow());
        var all = Steps.Of(run);
        var steps = all.Select((step, place) =>
        {
            var water = Math.Max(0, waterNow - WaterPercent(step.Pot)) * LnSdPerWaterPercent;
            var before = _tooFarInTemperature;
            var readings = Thinned([.. step.Readings.Select(r => Read(r, place, water)).OfType<BodyReading>()], all.Length);
            var lengths = strings is null ? [] : Thinned([.. step.Readings.Select(String).OfType<StringReading>()], all.Length);
            var doses = new Doses(step.Pot.DoseOf(thickener.Name), strings is null ? Dose.None : step.Pot.DoseOf(strings.Name));
            return new EvidenceStep(place, doses, readings, lengths, _tooFarInTemperature - before);
        }).ToImmutableArray();
        Warn(thickener);
        return steps;

        // Water of pre-dilution comes with every dose of the curve itself; only water poured on its own sets readings apart.
        double WaterPercent(Pot pot)
            => 100 * (pot.Water.Grams - run.Thickeners
                .Sum(t => pot.In(t.Name).Grams * t.Dilution.WaterParts / t.Dilution.ThickenerParts)) / pot.Base.Grams;
    }

    /// <summary>Those of a step's readings that count.</summary>
    private ImmutableArray<T> Thinned<T>(ImmutableArray<T> readings, int steps)
    {
        var kept = Thinning.Of(readings, steps);
        _thinned = (
            _thinned.Readings + (kept.Length < readings.Length ? readings.Length : 0),
            _thinned.Kept + (kept.Length < readings.Length ? kept.Length : 0));
        return kept;
    }

    private BodyReading? Read(PlacedReading placed, int step, double waterSd)
    {
        var reading = placed.Reading;
        if (reading.Acidity is { } acidity)
        {
            _lowestPh = Math.Min(_lowestPh, acidity.Ph);
            _highestPh = Math.Max(_highestPh, acidity.Ph);
            _lastPh = acidity.Ph;
        }

        if (_bodies.Read(reading, step) is not var (body, readingSd))
        {
            return null;
        }

        var (shift, distance) = (0.0, 0.0);
        if (reading.Temperature is { } at)
        {
            var reference = run.ReferenceTemperatureInForce;
            if (Math.Abs(at.Celsius - reference.Celsius) > TemperatureCorrection.GreatestDistance)
            {
                _tooFarInTemperature++;
                return null;
            }

            shift = TemperatureCorrection.LnShift(at, reference, _bodies.InUse.Coefficient).Shift;
            distance = TemperatureCorrection.Distance(at, reference);
            _corrected += Math.Abs(at.Celsius - reference.Celsius) >= 1 ? 1 : 0;
        }
        else
        {
            _withoutTemperature++;
        }

        _withoutWait += step > 0 && reading.Wait is null ? 1 : 0;
        var wait = Settled.WaitSeconds(step == 0, reading.Wait);
        return new(placed.Entry, step, wait, body.Ln + shift, (waterSd * waterSd) + (readingSd * readingSd)) { Distance = distance };
    }

    private static StringReading? String(PlacedReading placed)
    {
        if (placed.Reading.StringLength is not { } length)
        {
            return null;
        }

        var counted = Math.Max(length.Millimeters, RulerMillimeters);
        var ruler = RulerMillimeters / counted;
        return new(placed.Entry, Math.Log(counted), ruler * ruler);
    }

    private void Warn(Thickener thickener)
    {
        EvidenceWarning?[] all =
        [
            _tooFarInTemperature > 0 ? new EvidenceWarning.TooFarFromReference(_tooFarInTemperature) : null,
            _corrected > 0 ? new EvidenceWarning.Corrected(_corrected, _bodies.InUse) : null,
            _withoutTemperature > 0 ? new EvidenceWarning.WithoutTemperature(_withoutTemperature) : null,
            _withoutWait > 0 ? new EvidenceWarning.WithoutWait(_withoutWait) : null,
            _thinned.Kept > 0 ? new EvidenceWarning.Thinned(_thinned.Readings, _thinned.Kept) : null,
            .. NotesOn(thickener),
            _highestPh - _lowestPh > 0.5 ? new EvidenceWarning.AcidityMoved(_lowestPh, _highestPh) : null,
            run.Entries.Any(e => e.Counts && e is Entry.Watered) ? new EvidenceWarning.Watered(thickener.Name) : null,
        ];
        _warnings.AddRange(all.OfType<EvidenceWarning>());
    }

    /// <summary>What a reader must know of a thickener's curve; after <see cref="Collect"/>.</summary>
    public IEnumerable<EvidenceWarning> NotesOn(Thickener thickener)
    {
        if (LowPh(thickener) is { } ph)
        {
            yield return new EvidenceWarning.LowPh(ph);
        }

        if (!thickener.IsRangeStated)
        {
            yield return new EvidenceWarning.NoUsualRange(thickener.Name, thickener.UsualRange, thickener.Active);
        }
    }
}
