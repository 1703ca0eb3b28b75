using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Viscolog.RunFiles;

namespace Viscolog.Store.Journal;

/// <summary>Records as JSON.</summary>
internal static class RecordJson
{
    // A person reads the journal, so letters beyond ASCII stand as they are.
    private static readonly JavaScriptEncoder Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;

    private static readonly RecordContext Context = new(new(RecordContext.Default.Options) { Encoder = Encoder });
    private static readonly JsonTypeInfo<LogRecord> Record = Context.LogRecord;
    private static readonly JsonTypeInfo<FileRow> Row = Context.FileRow;

    /// <summary>A writer for records.</summary>
    public static Utf8JsonWriter Writer(IBufferWriter<byte> target) => new(target, new() { Encoder = Encoder });

    /// <summary>Writes a record.</summary>
    public static void Write(Utf8JsonWriter writer, LogRecord record) => JsonSerializer.Serialize(writer, record, Record);

    /// <summary>A row alone, on one line.</summary>
    public static string WriteRow(FileRow row) => JsonSerializer.Serialize(row, Row);

    /// <summary>Reads such a row.</summary>
    /// <exception cref="InvalidDataException">It is none.</exception>
    public static FileRow ReadRow(string json)
    {
        try
        {
            return JsonSerializer.Deserialize(json, Row) ?? throw new JsonException("null");
        }
        catch (JsonException e)
        {
            throw new InvalidDataException($"a row can't be read: {e.Message}", e);
        }
    }

    /// <summary>Reads a record.</summary>
    /// <exception cref="InvalidDataException">It is none.</exception>
    public static LogRecord Read(ReadOnlySpan<byte> json, long line)
    {
        try
        {
            return JsonSerializer.Deserialize(json, Record) ?? throw new JsonException("null");
        }
        catch (Exception e) when (e is JsonException or NotSupportedException)
        {
            throw new InvalidDataException(
                FormattableString.Invariant($"line {line} holds a record that this program can't read: {e.Message}"), e);
        }
    }
}

/// <summary>What the JSON is made from: names as in run files, nothing that says nothing.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(LogRecord))]
[JsonSerializable(typeof(FileRow))]
internal sealed partial class RecordContext : JsonSerializerContext;
