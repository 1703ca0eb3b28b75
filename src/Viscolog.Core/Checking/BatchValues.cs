using System.Collections.Immutable;
using System.Globalization;
using Viscolog.Core.Inference;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>Works out a batch's value from its readings.</summary>
internal sealed class BatchValues(Run run, BatchReadings readings, Scatter known, MethodDrift? drift, DateOnly today)
{
    /// <summary>Standard uncertainty of a bench thermometer in °C, shared by all readings (from memory).</summary>
    private const double ThermometerSd = 0.2;

    /// <summary>Standard uncertainty in °C of a pot whose temperature nobody read: anywhere within 2 °C of the reference (a rule of this
    /// project).</summary>
    private static readonly double UnreadSd = 2 / Math.Sqrt(3);

    /// <summary>Parts under this relative size are not worth a line.</summary>
    private const double Negligible = 0.0005;

    private readonly List<string> warnings = [];

    /// <summary>What the reader must know.</summary>
    public IReadOnlyList<string> Warnings => warnings;

    /// <summary>The value; there is at least one reading that counts.</summary>
    public BatchValue Value()
    {
        var counted = readings.Counted;
        var weights = Weights(counted);
        var count = weights.Sum();
        double Mean(Func<CountedReading, double> of) => counted.Select((r, i) => weights[i] * of(r)).Sum() / count;

        var mean = Mean(r => r.Ln);
        var (scatter, isOwn) = Pooled(counted, weights, mean);
        var bias = drift is { IsBiased: true } ? drift.LnBias : 0;
        var bare = Mean(r => r.HasTemperature ? 0 : r.LnPerCelsius) * UnreadSd;
        UncertaintyPart[] parts =
        [
            new("repeatability", Fraction(scatter.Deviation / Math.Sqrt(count)), true,
                Words(scatter, counted.Length, isOwn), "read it more often") { DegreesOfFreedom = scatter.Freedom },
            new("reading off", Fraction(Math.Sqrt(Mean(r => r.Own * r.Own) / count)), true, "stopwatch, scale or ruler, each reading its "
                + "own", "read it more often"),
            Calibration(counted),
            new("temperature", Fraction(Root(Mean(r => r.ShiftSd), Mean(r => r.HasTemperature
                ? r.LnPerCelsius : 0) * ThermometerSd)), false, TemperatureWords(counted), Warm("bring the pot to")),
            new("unread degrees", Fraction(bare), false, "anywhere within 2 °C of the reference", Warm("read the temperature, and bring "
                + "the pot to")),
            new("build-up", Fraction(Mean(r => r.Remaining)), false, "what may still be to come", "let it stand longer before it is read"),
        ];
        Warn(counted, weights);
        return new(Viscosity.FromLn(mean - bias), weights.Count(w => w >= 0.5), [.. parts.Where((p, i) => i == 0
            || p.Size.Fraction >= Negligible)])
        { LnBiasTakenOut = bias };
    }

    private static double Root(double a, double b) => Math.Sqrt((a * a) + (b * b));

    private static Percentage Fraction(double value) => Percentage.FromFraction(value);

    private string Warm(string what)
        => FormattableString.Invariant($"{what} {run.ReferenceTemperatureInForce.Celsius:0.#} °C and read it there");

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
    private (Scatter Scatter, bool IsOwn) Pooled(ImmutableArray<CountedReading> counted, double[] weights, double mean)
    {
        var freedom = weights.Sum() - 1;
        var squares = counted.Select((r, i) => weights[i] * (r.Ln - mean) * (r.Ln - mean)).Sum();
        var isOwn = freedom >= 0.5 && !known.Explains(squares, freedom, counted.Average(r => r.Own * r.Own));
        return (isOwn ? new(Math.Sqrt(squares / freedom), freedom) : known.With(squares, freedom), isOwn);
    }

    private string Words(Scatter scatter, int count, bool isOwn)
    {
        var these = FormattableString.Invariant($"these {count} readings");
        var from = isOwn ? $"that of {these} alone, which scatter more than the method does"
            : known.IsStated ? count == 1 ? "as stated" : $"from what is stated and {these}"
            : known.OfRepeats > 0
                ? FormattableString.Invariant($"from {known.OfRepeats:0} earlier repeats{(count == 1 ? "" : $", {these}")} and the method's default")
            : count == 1 ? "2.5 times the method's default, for one reading shows no scatter"
            : $"from {these} and the method's default";
        return FormattableString.Invariant($"{100 * scatter.Deviation:0.0} % a reading with {Freedom(scatter.Freedom)}, {from}");
    }

    private static string Freedom(double freedom)
        => FormattableString.Invariant($"{freedom:0.#} {(freedom is > 0.95 and < 1.05 ? "degree" : "degrees")} of freedom");

    /// <summary>
    /// A fresh check with a certified oil stands for the whole of the instrument; an old one leaves the formula's own doubt beside it;
    /// without one only that is known.
    /// A bias that is not significantly different from zero is left in the value and counts as uncertainty (JCGM 100:2008, F.2.4.5).
    /// </summary>
    private UncertaintyPart Calibration(ImmutableArray<CountedReading> counted)
    {
        var own = counted.Average(r => r.Calibration);
        const string remedy = "check the method with a certified oil, several readings";
        if (drift is null)
        {
            var words = own > 0 ? "the formula's own; never checked with a certified oil" : "taken as exact; never checked with a "
                + "certified oil";
            return new("calibration", Fraction(own), false, words, remedy);
        }

        var isOld = drift.IsOld(today);
        var size = isOld ? Root(drift.ForVerdicts.Fraction, own) : drift.ForVerdicts.Fraction;
        var bias = FormattableString.Invariant($"{Math.Abs(100 * double.ExpM1(drift.LnBias)):0.0} %");
        var taken = drift.IsBiased ? $"certified oil: {bias} too {(drift.LnBias > 0 ? "high" : "low")}, taken out; how well that is "
            + $"known counts" : $"certified oil: a bias of {bias} is not told from none and counts as doubt";
        return new("calibration", Fraction(size), false, isOld
            ? taken + "; the check is overdue, so the formula's own doubt counts too" : taken, remedy);
    }

    private string TemperatureWords(ImmutableArray<CountedReading> counted)
        => counted.All(r => !r.HasTemperature)
            ? "no temperature was read"
            : FormattableString.Invariant($"thermometer {ThermometerSd} °C, correction by {readings.CoefficientWords}");

    private void Warn(ImmutableArray<CountedReading> counted, double[] weights)
    {
        if (weights.Count(w => w < 0.5) is var outliers and > 0)
        {
            warnings.Add(string.Create(CultureInfo.InvariantCulture, $"{outliers} of {counted.Length} readings "
                + $"{(outliers == 1 ? "lies" : "lie")} far off the others and {(outliers == 1 ? "counts" : "count")} for next to nothing"));
        }

        if (readings.All > counted.Length)
        {
            var early = readings.All - counted.Length;
            warnings.Add(string.Create(CultureInfo.InvariantCulture, $"{early} {(early == 1 ? "reading was" : "readings were")} taken "
                + $"before the pot had settled and {(early == 1 ? "does" : "do")} not count"));
        }

        if (readings.TooFar > 0)
        {
            warnings.Add(
                string.Create(CultureInfo.InvariantCulture, $"{readings.TooFar} {(readings.TooFar == 1 ? "reading" : "readings")} more "
                    + $"than 10 °C from the reference temperature left out; read nearer to it"));
        }

        if (counted.Count(r => !r.HasTemperature) is var bare and > 0)
        {
            warnings.Add(string.Create(CultureInfo.InvariantCulture, $"{bare} {(bare == 1 ? "reading" : "readings")} without "
                + $"temperature: taken within 2 °C of {run.ReferenceTemperatureInForce.Celsius:0.#} °C"));
        }

        if (drift is null)
        {
            warnings.Add($"{run.MethodInForce.Id} was never checked with a certified oil at this bench: a bias of the instrument would "
                + $"go unseen");
        }
        else if (drift.IsOld(today))
        {
            warnings.Add(drift.Words(today));
        }
    }
}
