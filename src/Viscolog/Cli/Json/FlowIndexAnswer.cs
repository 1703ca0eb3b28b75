using System.Text.Json.Serialization;

namespace Viscolog.Cli.Json;

/// <summary>The shear-thinning index.</summary>
internal sealed record FlowIndexAnswer(double Value, [property: JsonPropertyName("from_1_s")] double From, bool OutsideData);
