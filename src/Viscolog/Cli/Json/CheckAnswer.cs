using Viscolog.Core.Advising;
using Viscolog.Core.Checking;
using Viscolog.Core.Quantities;
using Viscolog.Wording;

namespace Viscolog.Cli.Json;

/// <summary>A check as <c>viscolog.check/1</c>.</summary>
internal sealed record CheckAnswer() : Answer("viscolog.check/1")
{
    public string? Run { get; init; }
    public required string Specification { get; init; }
    public required string Verdict { get; init; }
    public double? ConformityPct { get; init; }
    public double? ValueMpas { get; init; }
    public double? UncertaintyMpas { get; init; }
    public double? DegreesOfFreedom { get; init; }
    public double? LowMpas { get; init; }
    public double? HighMpas { get; init; }
    public double? AcceptFromMpas { get; init; }
    public double? AcceptToMpas { get; init; }
    public required double ReferenceTempC { get; init; }
    public required int Readings { get; init; }
    public int? MoreReadings { get; init; }
    public required string Rule { get; init; }
    public double? GuardBandPct { get; init; }
    public IReadOnlyList<PartAnswer>? Parts { get; init; }
    public QualityAnswer? Ph { get; init; }
    public QualityAnswer? StringMm { get; init; }
    public DriftAnswer? Drift { get; init; }
    public string? Thickener { get; init; }
    public double? AddG { get; init; }
    public double? LetDownG { get; init; }
    public required string Next { get; init; }
    public required IReadOnlyList<string> Warnings { get; init; }

    public static CheckAnswer Of(BatchCheck check, DateOnly today, IEnumerable<string> fileWarnings)
    {
        var value = check.Body?.Value;
        var advice = (check.Next as NextStep.Correct)?.Advice;
        return new()
        {
            Run = check.Run.Name,
            Specification = check.Specification.Name,
            Verdict = CheckWords.Name(check.Verdict),
            ConformityPct = (check.Body is null ? check.Chance : check.Body.Chance) is { } chance ? Math.Round(chance.Percent, 2) : null,
            ValueMpas = value is null ? null : Rounded.Four(value.Body.MilliPascalSeconds),
            UncertaintyMpas = value is null ? null : Rounded.Four(value.StandardUncertainty.MilliPascalSeconds),
            DegreesOfFreedom = value is { DegreesOfFreedom: < 1e5 } ? Rounded.Four(value.DegreesOfFreedom) : null,
            LowMpas = Number(check.Body?.Band.Low),
            HighMpas = Number(check.Body?.Band.High),
            AcceptFromMpas = Number(check.Body?.Accepted?.Low),
            AcceptToMpas = Number(check.Body?.Accepted?.High),
            ReferenceTempC = check.Run.ReferenceTemperatureInForce.Celsius,
            Readings = value?.Readings ?? 0,
            MoreReadings = (check.Verdict as Verdict.Undecided)?.MoreReadings,
            Rule = CheckWords.Rule(),
            GuardBandPct = check.Body?.GuardBand is { } guard ? Rounded.Four(guard.Percent) : null,
            Parts = value is null
                ? null
                : [.. value.Parts.Select(p => new PartAnswer(
                    UncertaintyWords.Name(p), Rounded.Four(p.Size.Percent), p.ShrinksWithReadings, UncertaintyWords.Of(p)))],
            Ph = check.Acidity is { } ph ? new(ph.Mean?.Ph, ph.Band.Low.Ph, ph.Band.High.Ph, Percent(ph.Chance)) : null,
            StringMm = check.StringLength is { } s
                ? new(
                    s.Mean is { } mm ? Rounded.Four(mm.Millimeters) : null, s.Band.Low.Millimeters, s.Band.High.Millimeters,
                    Percent(s.Chance))
                : null,
            Drift = check.Drift is { } drift ? DriftAnswer.Of(drift, today) : null,
            Thickener = advice?.Thickener.Name,
            AddG = (advice?.Action as BenchAction.Add)?.Poured.Grams,
            LetDownG = (advice?.Action as BenchAction.LetDown)?.Base.Grams,
            Next = CheckWords.Next(check),
            Warnings = [.. fileWarnings, .. check.Warnings.Select(CheckRemarks.Of)],
        };
    }

    private static double? Percent(Percentage? chance) => chance is { } c ? Math.Round(c.Percent, 2) : null;

    private static double? Number(Viscosity? viscosity) => viscosity is { } v ? Rounded.Six(v.MilliPascalSeconds) : null;
}

/// <summary>One part of an uncertainty.</summary>
internal sealed record PartAnswer(string Part, double Pct, bool ShrinksWithReadings, string Words);

/// <summary>Something beside the body that a specification asks for.</summary>
internal sealed record QualityAnswer(double? Value, double Low, double High, double? ConformityPct);
