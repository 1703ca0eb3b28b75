using System.Text.Json.Serialization;

namespace Viscolog.Store;

/// <summary>What the JSON of the journal's lines is made from: names as in run files, nothing that says nothing.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(LogRecord))]
internal sealed partial class LogJson : JsonSerializerContext;
