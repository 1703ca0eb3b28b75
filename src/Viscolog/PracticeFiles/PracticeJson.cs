using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Viscolog.PracticeFiles;

/// <summary>What the JSON of kept games is made from.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    RespectNullableAnnotations = true,
    WriteIndented = true)]
[JsonSerializable(typeof(PracticeResult))]
internal sealed partial class PracticeJson : JsonSerializerContext
{
    /// <summary>With text as it is: the file is no web page.</summary>
    public static PracticeJson Relaxed
        => field ??= new(new JsonSerializerOptions(Default.Options!) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
}
