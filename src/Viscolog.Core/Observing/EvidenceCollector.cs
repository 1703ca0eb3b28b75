using System.Collections.Immutable;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

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

    private readonly List<string> warnings = [];
    private readonly BodyReader bodies = new(run);
    private int withoutWait;
    private int withoutTemperature;
    private int tooFarInTemperature;
    private int corrected;
    private double lowestPh = double.PositiveInfinity;
    private double highestPh = double.NegativeInfinity;
    private double? lastPh;

    public ImmutableArray<string> Warnings => [.. warnings, .. bodies.Warnings];

    /// <summary>Why the readings can't carry a curve; null where they can.</summary>
    public string? Trouble => bodies.Trouble;

    /// <summary>The last pH where it is too low for the thickener; else null.</summary>
    public double? LowPh(Thickener thickener) => thickener.Chemistry == ThickenerChemistry.AlkaliSwellable && lastPh < LeastPh ? lastPh : null;

    /// <summary>The steps over the doses of the thickener that makes the body and, with two, of the one that brings the string.</summary>
    public ImmutableArray<EvidenceStep> Collect(Thickener thickener, Thickener? strings)
    {
        var waterNow = WaterPercent(run.PotNow());
        var steps = Steps.Of(run).Select((step, place) =>
        {
            var water = Math.Max(0, waterNow - WaterPercent(step.Pot)) * LnSdPerWaterPercent;
            var before = tooFarInTemperature;
            ImmutableArray<BodyReading> readings = [.. step.Readings.Select(r => Read(r, place, water)).OfType<BodyReading>()];
            ImmutableArray<StringReading> lengths = strings is null ? [] : [.. step.Readings.Select(String).OfType<StringReading>()];
            var doses = new Doses(step.Pot.DoseOf(thickener.Name), strings is null ? Dose.None : step.Pot.DoseOf(strings.Name));
            return new EvidenceStep(place, doses, readings, lengths, tooFarInTemperature - before);
        }).ToImmutableArray();
        Warn(thickener);
        return steps;

        // Water of pre-dilution comes with every dose of the curve itself; only water poured on its own sets readings apart.
        double WaterPercent(Pot pot)
            => 100 * (pot.Water.Grams - run.Thickeners.Sum(t => pot.In(t.Name).Grams * t.Dilution.WaterParts / t.Dilution.ThickenerParts)) / pot.Base.Grams;
    }

    private BodyReading? Read(PlacedReading placed, int step, double waterSd)
    {
        var reading = placed.Reading;
        if (reading.Acidity is { } acidity)
        {
            lowestPh = Math.Min(lowestPh, acidity.Ph);
            highestPh = Math.Max(highestPh, acidity.Ph);
            lastPh = acidity.Ph;
        }

        if (bodies.Read(reading, step) is not var (body, readingSd))
        {
            return null;
        }

        var (shift, sd) = (0.0, 0.0);
        if (reading.Temperature is { } at)
        {
            var reference = run.ReferenceTemperatureInForce;
            if (Math.Abs(at.Celsius - reference.Celsius) > TemperatureCorrection.GreatestDistance)
            {
                tooFarInTemperature++;
                return null;
            }

            (shift, sd) = TemperatureCorrection.LnShift(at, reference, bodies.Coefficient);
            corrected += Math.Abs(at.Celsius - reference.Celsius) >= 1 ? 1 : 0;
        }
        else
        {
            withoutTemperature++;
        }

        // The base before any addition has nothing to build up.
        var settled = step == 0 || reading.Wait is null;
        withoutWait += step > 0 && reading.Wait is null ? 1 : 0;
        var wait = settled ? double.PositiveInfinity : reading.Wait!.Value.TotalSeconds;
        return new(placed.Entry, step, wait, body.Ln + shift, (sd * sd) + (waterSd * waterSd) + (readingSd * readingSd));
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
        if (tooFarInTemperature > 0)
        {
            warnings.Add($"{Readings(tooFarInTemperature)} more than 10 °C from the reference temperature left out; read nearer to it");
        }

        if (corrected > 0)
        {
            warnings.Add($"{Readings(corrected)} corrected for temperature with {bodies.CoefficientWords} (see docs/science.md, section 3)");
        }

        if (withoutTemperature > 0)
        {
            warnings.Add($"{Readings(withoutTemperature)} without temperature, taken as read at the reference temperature");
        }

        if (withoutWait > 0)
        {
            warnings.Add($"{Readings(withoutWait)} without wait_s, taken as settled");
        }

        warnings.AddRange(NotesOn(thickener));
        if (highestPh - lowestPh > 0.5)
        {
            warnings.Add(FormattableString.Invariant($"the pH moved from {lowestPh:0.0} to {highestPh:0.0} within the run; a curve across a pH change means little"));
        }

        if (run.Entries.Any(e => e.Counts && e is Entry.Watered))
        {
            warnings.Add($"water was added; readings before it count for less, as the curve of '{thickener.Name}' has moved since");
        }
    }

    /// <summary>What a reader must know of a thickener's curve; after <see cref="Collect"/>.</summary>
    public IEnumerable<string> NotesOn(Thickener thickener)
    {
        if (LowPh(thickener) is { } ph)
        {
            yield return FormattableString.Invariant($"at pH {ph:0.0} an alkali-swellable thickener hardly swells: raise the pH first, the curve means little");
        }

        if (ReferenceEquals(thickener.UsualRange, DoseRange.Common))
        {
            yield return $"no usual range is stated for '{thickener.Name}': 1 to 5 % is assumed; a strong thickener needs its own range_pct";
        }
    }

    private static string Readings(int count) => count == 1 ? "1 reading" : FormattableString.Invariant($"{count} readings");
}
