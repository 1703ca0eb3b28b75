using System.Globalization;
using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;

namespace Viscolog.Wording;

/// <summary>Advice in words, the same on the screen and in print.</summary>
internal static class AdviceWords
{
    /// <summary>What to do, in one line or two.</summary>
    public static IEnumerable<string> Headline(Advice advice) => advice.Action switch
    {
        BenchAction.Add add =>
        [
            $"ADD {Shown.Grams(add.Poured)} {advice.Thickener}   (dose {Shown.Dose(advice.DoseNow)} → {Shown.Dose(add.After)})",
            $"Stir it in well, let it stand {Shown.Duration(add.Standing)}, then {(advice.Pair is null ? "read" : "read and draw a string")}.",
        ],
        BenchAction.Wait wait => [$"WAIT {Shown.Duration(wait.More)} more, then read again. Add nothing yet."],
        BenchAction.Stop when advice.Pair is not null => ["STOP. Body and string are in band: add nothing more."],
        BenchAction.Stop => ["STOP. It is in band: add nothing more."],
        BenchAction.LetDown letDown => [$"LET DOWN with {Shown.Grams(letDown.Base)} of base   (dose {Shown.Dose(advice.DoseNow)} → {Shown.Dose(letDown.After)})", advice.Pair is null ? "Stir it in well, then read." : "Stir it in well, then read and draw a string."],
        BenchAction.GiveUp giveUp => [$"STOP ADDING. {giveUp.Remedy}"],
        BenchAction.Measure when advice.Pair is { AsksForString: true } => ["DRAW A STRING from the pot. Add nothing yet."],
        BenchAction.Measure { Standing: { } standing } => [$"READ the pot after {Shown.Duration(standing)} of standing. Add nothing yet."],
        BenchAction.Measure => ["READ the pot. Add nothing yet."],
        var other => throw new ArgumentOutOfRangeException(nameof(advice), other, "not a case of the closed set"),
    };

    /// <summary>The settled body that the action leads to; null where it leads to none.</summary>
    public static Estimate? Expected(BenchAction action) => action switch
    {
        BenchAction.Add add => add.Expected,
        BenchAction.LetDown letDown => letDown.Expected,
        _ => null,
    };

    /// <summary>What is still to come, in words: about so much of one thickener, then so much of the other; null where nothing is.</summary>
    public static string? Plan(PairAdvice pair) => pair.Plan.Length == 0
        ? null
        : "about " + string.Join(", then ", pair.Plan.Select(p => $"{p.About.Percent.ToString("0.0#", CultureInfo.InvariantCulture)} % {p.Thickener}{(p.Additions == 1 ? "" : $" in {p.Additions.ToString(CultureInfo.InvariantCulture)} additions")}"));

    /// <summary>The string band in words.</summary>
    public static string Strings(PairAdvice pair) => FormattableString.Invariant($"string {pair.Low.Millimeters:0.##} to {pair.High.Millimeters:0.##} mm");

    /// <summary>The band in words.</summary>
    public static string Band(ViscosityBand band)
    {
        var below = 1 - (band.Low.MilliPascalSeconds / band.Aim.MilliPascalSeconds);
        var above = (band.High.MilliPascalSeconds / band.Aim.MilliPascalSeconds) - 1;
        return Math.Abs(above - below) < 1e-9
            ? $"{Shown.Body(band.Aim)} ±{(100 * above).ToString("0.#", CultureInfo.InvariantCulture)} %"
            : $"{Shown.Limit(band.Low.MilliPascalSeconds)} to {Shown.Limit(band.High.MilliPascalSeconds)} mPa·s";
    }
}
