using System.Collections.Immutable;
using Viscolog.Core.Inference;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>Works out a batch's value from its readings.</summary>
internal sealed class BatchValues(Run run, BatchReadings readings, Scatter known, MethodDrift? drift, DateOnly today)
{
    /// <summary>Standard uncertainty in °C of a pot whose temperature nobody read: anywhere within 2 °C of the reference (a rule of this
    /// project).</summary>
    private static readonly double UnreadSd = 2 / Math.Sqrt(3);

    /// <summary>Parts under this relative size are not worth a line.</summary>
    private const double Negligible = 0.0005;

    /// <summary>What the reader must know; after <see cref="Value"/>.</summary>
    public ImmutableArray<CheckWarning> Warnings { get; private set; } = [];

    /// <summary>The value; there is at least one reading that counts.</summary>
    public BatchValue Value()
    {
        var counted = readings.Counted;
        var weights = Weights(counted);
        var count = weights.Sum();
        double Mean(Func<CountedReading, double> of) => counted.Select((r, i) => weights[i] * of(r)).Sum() / count;

        var mean = Mean(r => r.Ln);
        var bias = drift is { IsBiased: true } ? drift.LnBias : 0;
        UncertaintyPart[] parts =
        [
            Repeatability(counted, weights, mean),
            new UncertaintyPart.ReadingOff(Fraction(Math.Sqrt(Mean(r => r.Own * r.Own) / count))),
            Calibration(counted),
            new UncertaintyPart.OfTemperature(
                Fraction(Root(
                    Mean(r => r.ShiftSd), Mean(r => r.HasTemperature ? r.LnPerCelsius : 0) * UncertaintyPart.OfTemperature.Thermometer)),
                counted.Any(r => r.HasTemperature), readings.Coefficient),
            new UncertaintyPart.UnreadDegrees(Fraction(Mean(r => r.HasTemperature ? 0 : r.LnPerCelsius) * UnreadSd)),
            new UncertaintyPart.BuildUp(Fraction(Mean(r => r.Remaining))),
        ];
        Warnings = [.. Warned(counted, weights)];
        return new(
            Viscosity.FromLn(mean - bias), weights.Count(w => w >= 0.5),
            [.. parts.Where(p => p is UncertaintyPart.Repeatability || p.Size.Fraction >= Negligible)])
        { LnBiasTakenOut = bias };
    }

    private static double Root(double a, double b) => Math.Sqrt((a * a) + (b * b));

    private static Percentage Fraction(double value) => Percentage.FromFraction(value);

    /// <summary>A reading far off the middle of three or more counts by the chance that it is no outlier.</summary>
    private double[] Weights(ImmutableArray<CountedReading> counted)
    {
        if (counted.Length < 3)
        {
            return [.. Enumerable.Repeat(1.0, counted.Length)];
        }

        double[] sorted = [.. counted.Select(r => r.Ln).Order()];
        var middle = (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
        var variance = known.Deviation * known.Deviation;
        double[] weights = [.. counted.Select(r => 1 - CurveFilter.OutlierChance(r.Ln - middle, variance + (r.Own * r.Own)))];
        return weights.Sum() > 0.5 ? weights : [.. Enumerable.Repeat(1.0, counted.Length)];
    }

    /// <summary>What was known of the scatter with that of these readings; where they scatter far more than that explains, theirs
    /// alone.</summary>
    private UncertaintyPart.Repeatability Repeatability(ImmutableArray<CountedReading> counted, double[] weights, double mean)
    {
        var freedom = weights.Sum() - 1;
        var squares = counted.Select((r, i) => weights[i] * (r.Ln - mean) * (r.Ln - mean)).Sum();
        var isOwn = freedom >= 0.5 && !known.Explains(squares, freedom, counted.Average(r => r.Own * r.Own));
        var scatter = isOwn ? new(Math.Sqrt(squares / freedom), freedom) : known.With(squares, freedom);
        return new(
            Fraction(scatter.Deviation / Math.Sqrt(weights.Sum())), Fraction(scatter.Deviation), counted.Length,
            isOwn ? ScatterOrigin.Own : known.Origin)
        {
            DegreesOfFreedom = scatter.Freedom,
            Earlier = known.OfRepeats,
        };
    }

    /// <summary>
    /// A fresh check with a certified oil stands for the whole of the instrument; an old one leaves the formula's own doubt beside it;
    /// without one only that is known.
    /// A bias that is not significantly different from zero is left in the value and counts as uncertainty (JCGM 100:2008, F.2.4.5).
    /// </summary>
    private UncertaintyPart.Calibration Calibration(ImmutableArray<CountedReading> counted)
    {
        var own = counted.Average(r => r.Calibration);
        var isOverdue = drift is not null && drift.IsOld(today);
        var size = drift is null ? own : isOverdue ? Root(drift.ForVerdicts.Fraction, own) : drift.ForVerdicts.Fraction;
        return new(Fraction(size), drift, own > 0, isOverdue);
    }

    private IEnumerable<CheckWarning> Warned(ImmutableArray<CountedReading> counted, double[] weights)
    {
        if (weights.Count(w => w < 0.5) is var outliers and > 0)
        {
            yield return new CheckWarning.Outliers(outliers, counted.Length);
        }

        if (readings.All > counted.Length)
        {
            yield return new CheckWarning.ReadEarly(readings.All - counted.Length);
        }

        if (readings.TooFar > 0)
        {
            yield return new CheckWarning.TooFarFromReference(readings.TooFar);
        }

        if (counted.Count(r => !r.HasTemperature) is var bare and > 0)
        {
            yield return new CheckWarning.NoTemperature(bare, run.ReferenceTemperatureInForce);
        }

        if (drift is null)
        {
            yield return new CheckWarning.NeverChecked(run.MethodInForce);
        }
        else if (drift.IsOld(today))
        {
            yield return new CheckWarning.CheckOverdue(drift, today);
        }
    }
}
