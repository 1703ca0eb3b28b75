using System.Text.Json.Serialization;

namespace Viscolog.Cli.Json;

/// <summary>A viscosity at a rate.</summary>
internal sealed record FlowAtAnswer(
    string? Process,
    [property: JsonPropertyName("shear_rate_1_s")] double ShearRate,
    double MedianPas,
    double LowPas,
    double HighPas,
    bool OutsideData);
