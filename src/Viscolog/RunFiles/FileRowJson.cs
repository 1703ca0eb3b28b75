using System.Text.Json;
using System.Text.Json.Serialization;

namespace Viscolog.RunFiles;

/// <summary>A row in JSON: a property for each column in which something stands, with its name; the unknown texts last.</summary>
internal sealed class FileRowJson : JsonConverter<FileRow>
{
    /// <summary>The property of the texts of unknown columns.</summary>
    public const string Unknown = "unknown";

    /// <inheritdoc/>
    public override FileRow Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var (row, unknown) = (new RowDraft(), new List<string>());
        if (reader.TokenType != JsonTokenType.StartObject)
        {
            throw new JsonException("a row is an object");
        }

        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var name = reader.GetString()!;
            reader.Read();
            if (name == Unknown && reader.TokenType == JsonTokenType.StartArray)
            {
                while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
                {
                    unknown.Add(reader.GetString() ?? throw new JsonException("a text is missing"));
                }
            }
            else if (reader.TokenType != JsonTokenType.Null)
            {
                Restore(row, name, ref reader);
            }
        }

        try
        {
            return row.ToRow() with { Unknown = [.. unknown] };
        }
        catch (ArgumentException e)
        {
            throw new JsonException($"a row says what can't be: {e.Message}", e);
        }
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, FileRow value, JsonSerializerOptions options)
    {
        writer.WriteStartObject();
        foreach (var column in Columns.All)
        {
            switch (column.Of(value))
            {
                case double number:
                    writer.WriteNumber(column.Name, number);
                    break;
                case decimal seconds:
                    writer.WriteNumber(column.Name, seconds);
                    break;
                case string text:
                    writer.WriteString(column.Name, text);
                    break;
                default:
                    break;
            }
        }

        if (value.Unknown.Any(t => t.Length > 0))
        {
            writer.WriteStartArray(Unknown);
            foreach (var text in value.Unknown)
            {
                writer.WriteStringValue(text);
            }

            writer.WriteEndArray();
        }

        writer.WriteEndObject();
    }

    private static void Restore(RowDraft row, string name, ref Utf8JsonReader reader)
    {
        if (!Columns.ByName.TryGetValue(name, out var column))
        {
            throw new JsonException($"a row has no '{name}'");
        }

        try
        {
            object held = column switch
            {
                Column.Number => reader.GetDouble(),
                Column.Seconds => reader.GetDecimal(),
                _ => reader.GetString()!,
            };
            if (column.Restore(row, held) is { } expected)
            {
                throw new JsonException($"'{name}' of a row is '{held}', expected {expected}");
            }
        }
        catch (Exception e) when (e is InvalidOperationException or FormatException or ArgumentException or OverflowException)
        {
            throw new JsonException($"'{name}' of a row can't be read: {e.Message}", e);
        }
    }
}
