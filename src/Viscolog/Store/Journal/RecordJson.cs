using System.Buffers;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Viscolog.RunFiles;

namespace Viscolog.Store.Journal;

/// <summary>Records as JSON.</summary>
internal static class RecordJson
{
    private static readonly JsonTypeInfo<LogRecord> Record
        = new RecordContext(new(RecordContext.Default.Options) { Encoder = RowJson.Encoder }).LogRecord;

    /// <summary>A writer for records.</summary>
    public static Utf8JsonWriter Writer(IBufferWriter<byte> target) => new(target, new() { Encoder = RowJson.Encoder });

    /// <summary>Writes a record.</summary>
    public static void Write(Utf8JsonWriter writer, LogRecord record)
    {
        if (record is not LogRecord.RowAdded { Json: { } json } row)
        {
            JsonSerializer.Serialize(writer, record, Record);
            return;
        }

        // The same text, with the row as it is at hand.
        writer.WriteStartObject();
        writer.WriteString("kind"u8, "row"u8);
        writer.WriteNumber("run"u8, row.Run);
        writer.WriteNumber("row"u8, row.Row);
        writer.WritePropertyName("is"u8);
        writer.WriteRawValue(json.Span, skipInputValidation: true);
        if (row.After is { } after)
        {
            writer.WriteNumber("after"u8, after);
        }

        if (row.At is { } at)
        {
            writer.WriteString("at"u8, at);
        }

        writer.WriteEndObject();
    }

    /// <summary>Reads a record.</summary>
    /// <exception cref="InvalidDataException">It is none.</exception>
    public static LogRecord Read(ReadOnlySpan<byte> json, long line)
    {
        try
        {
            var record = JsonSerializer.Deserialize(json, Record) ?? throw new JsonException("null");
            return Texts(record).Any(t => t is null) ? throw new JsonException("a text is missing") : record;
        }
        catch (Exception e) when (e is JsonException or NotSupportedException)
        {
            throw new InvalidDataException(
                FormattableString.Invariant($"line {line} holds a record that this program can't read: {e.Message}"), e);
        }
    }

    /// <summary>The texts of a record in lists, where null may stand for one.</summary>
    private static IEnumerable<string?> Texts(LogRecord record) => record switch
    {
        LogRecord.RunStated stated => stated.Header.Concat(stated.Columns ?? []),
        LogRecord.MaterialStated { Is.Cells: var cells } => cells.Values,
        LogRecord.OilRead { Is: var cells } => cells.Values,
        _ => [],
    };
}

/// <summary>What the JSON is made from: names as in run files, nothing that says nothing.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(LogRecord))]
internal sealed partial class RecordContext : JsonSerializerContext;
