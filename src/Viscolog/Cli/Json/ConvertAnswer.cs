using System.Text.Json.Serialization;
using Viscolog.Core.Measuring;
using Viscolog.Wording;

namespace Viscolog.Cli.Json;

/// <summary>A converted reading as <c>viscolog.convert/1</c>.</summary>
internal sealed record ConvertAnswer() : Answer("viscolog.convert/1")
{
    public required string Method { get; init; }
    public required double Value { get; init; }
    public required string Unit { get; init; }

    /// <summary>Null, not absent, where the method tells none.</summary>
    [JsonPropertyName("kinematic_mm2_s")]
    [JsonIgnore(Condition = JsonIgnoreCondition.Never)]
    public required double? Kinematic { get; init; }

    /// <summary>Null, not absent, where the method tells none or no density is given.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.Never)]
    public required double? DynamicMpas { get; init; }
    public double? YieldStressPa { get; init; }
    public required double UncertaintyPct { get; init; }
    public ReferenceAnswer? AtReference { get; init; }
    public required string Shear { get; init; }

    [JsonPropertyName("shear_rate_1_s")]
    public double? ShearRate { get; init; }
    public string? Better { get; init; }
    public required IReadOnlyList<string> Warnings { get; init; }
    public required string Source { get; init; }

    public static ConvertAnswer Of(Method method, double value, ConvertedReading reading, ReferenceValue? at) => new()
    {
        Method = method.Id,
        Value = value,
        Unit = ReadingWords.Typed(method),
        Kinematic = Four(reading.Kinematic?.SquareMillimetersPerSecond),
        DynamicMpas = Four(reading.Dynamic?.MilliPascalSeconds),
        YieldStressPa = Four(reading.YieldStress?.Pascals),
        UncertaintyPct = Rounded.Four(reading.Uncertainty.Percent),
        AtReference = at is null ? null : new(
            at.At.Celsius,
            Four(reading.Kinematic?.SquareMillimetersPerSecond * at.Factor),
            Four(reading.Dynamic?.MilliPascalSeconds * at.Factor),
            Four(reading.YieldStress?.Pascals * at.Factor),
            Rounded.Four(at.Uncertainty.Percent)),
        Shear = MethodWords.Shear(reading),
        ShearRate = Four(reading.Rate?.PerSecond),
        Better = reading.Better is { } better ? MethodWords.Of(better) : null,
        Warnings = [.. reading.Warnings.Select(MethodWords.Of)],
        Source = MethodWords.Source(reading),
    };

    private static double? Four(double? value) => value is { } v ? Rounded.Four(v) : null;
}

/// <summary>A converted reading at the reference temperature.</summary>
internal sealed record ReferenceAnswer(
    double TempC, double? KinematicMm2S, double? DynamicMpas, double? YieldStressPa, double UncertaintyPct);

/// <summary>A value in another unit as <c>viscolog.units/1</c>.</summary>
internal sealed record UnitAnswer(double Value, string Unit, double Result, string ResultUnit)
{
    public string Schema { get; } = "viscolog.units/1";
}
