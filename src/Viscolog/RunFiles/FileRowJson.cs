using System.Text.Json;
using System.Text.Json.Serialization;

namespace Viscolog.RunFiles;

/// <summary>A row in JSON: a property for each column in which something stands, with its name; the unknown texts last.</summary>
internal sealed class FileRowJson : JsonConverter<FileRow>
{
    /// <summary>The property of the texts of unknown columns.</summary>
    public const string Unknown = "unknown";

    private const int LongestName = 64;

    /// <summary>Reads a row that stands alone.</summary>
    /// <exception cref="JsonException">It is none.</exception>
    public static FileRow Read(ReadOnlySpan<byte> json)
    {
        try
        {
            var reader = new Utf8JsonReader(json);
            reader.Read();
            var row = Read(ref reader);
            return reader.Read() ? throw new JsonException("something stands behind a row") : row;
        }
        catch (InvalidOperationException e)
        {
            throw new JsonException($"a text of a row can't be read: {e.Message}", e);
        }
    }

    /// <inheritdoc/>
    public override FileRow Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Read(ref reader);

    private static FileRow Read(ref Utf8JsonReader reader)
    {
        var row = new RowDraft();
        List<string>? unknown = null;
        if (reader.TokenType != JsonTokenType.StartObject)
        {
            throw new JsonException("a row is an object");
        }

        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var (column, name) = NameAt(ref reader);
            reader.Read();
            if (name == Unknown && reader.TokenType == JsonTokenType.StartArray)
            {
                unknown ??= [];
                while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
                {
                    unknown.Add(reader.GetString() ?? throw new JsonException("a text is missing"));
                }
            }
            else if (reader.TokenType != JsonTokenType.Null)
            {
                Restore(row, column ?? throw new JsonException($"a row has no '{name}'"), ref reader);
            }
        }

        try
        {
            return unknown is null ? row.ToRow() : row.ToRow() with { Unknown = [.. unknown] };
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

    // Rows come by the million and the names are few, so a name is made into a text only where it is none of theirs.
    private static (Column? Column, string Name) NameAt(ref Utf8JsonReader reader)
    {
        Span<char> letters = stackalloc char[LongestName];
        var column = reader.ValueSpan.Length <= LongestName
            && Columns.ByName.GetAlternateLookup<ReadOnlySpan<char>>()
                .TryGetValue(letters[..reader.CopyString(letters)], out var known) ? known : null;
        return (column, column?.Name ?? reader.GetString()!);
    }

    private static void Restore(RowDraft row, Column column, ref Utf8JsonReader reader)
    {
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
                throw new JsonException($"'{column.Name}' of a row is '{held}', expected {expected}");
            }
        }
        catch (Exception e) when (e is InvalidOperationException or FormatException or ArgumentException or OverflowException)
        {
            throw new JsonException($"'{column.Name}' of a row can't be read: {e.Message}", e);
        }
    }
}
