using System.Text.Json.Serialization;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Cli.Json;

/// <summary>A comparison of thickeners as <c>viscolog.compare/1</c>.</summary>
internal sealed record CompareAnswer(string Base, double TargetMpas, CompareAnswer.Ends? StringMm, IReadOnlyList<CompareAnswer.One> Candidates, IReadOnlyList<string> Warnings)
{
    [JsonPropertyOrder(-1)]
    public string Schema { get; } = "viscolog.compare/1";

    /// <summary>A median with the interval that holds 9 times in 10; no high end where it lies beyond the range.</summary>
    internal sealed record Value(double Median, double Low, double? High)
    {
        public static Value? Of(Spread? spread) => spread is null ? null : new(Rounded.Four(spread.Median), Rounded.Four(spread.Low), spread.High is { } high ? Rounded.Four(high) : null);
    }

    /// <summary>The string wanted.</summary>
    internal sealed record Ends(double Low, double High);

    /// <summary>A thickener or a pair.</summary>
    internal sealed record One(IReadOnlyList<string> Thickeners, int Runs, double ChanceReachedPct, Value? DosePct, Value? CostPerKg, Value? WaterPct)
    {
        public static One Of(Contender contender) => new(
            [.. contender.Thickeners.Select(t => t.Name)], contender.Runs, Math.Round(contender.ChanceReached.Percent, 1), Value.Of(contender.Dose), Value.Of(contender.Cost), Value.Of(contender.Water));
    }

    public static CompareAnswer Of(string @base, ViscosityBand body, StringBand? strings, IEnumerable<Contender> contenders, IReadOnlyList<string> warnings) => new(
        @base, Rounded.Four(body.Aim.MilliPascalSeconds), strings is null ? null : new(strings.Low.Millimeters, strings.High.Millimeters), [.. contenders.Select(One.Of)], warnings);
}
