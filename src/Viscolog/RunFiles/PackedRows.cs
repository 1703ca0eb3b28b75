using System.Buffers;
using System.IO.Compression;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Viscolog.Output;

namespace Viscolog.RunFiles;

/// <summary>
/// The rows of a long run as the journal writes them, compressed: some thirtieth of the memory that they take as entries.
/// </summary>
internal sealed class PackedRows
{
    private const int BlockLength = 1 << 16;

    // The fastest, which is enough for rows that are much alike.
    private const int Quality = 1;
    private const int Window = 16;

    private readonly List<(byte[] Packed, int Length)> _blocks = [];
    private readonly ArrayBufferWriter<byte> _open = new(BlockLength);

    /// <summary>How many they are.</summary>
    public int Count { get; private set; }

    /// <summary>Adds a row, as JSON, at the end.</summary>
    public void Add(ReadOnlySpan<byte> row)
    {
        _open.Write(row);
        _open.Write("\n"u8);
        Count++;
        if (_open.WrittenCount > BlockLength - (BlockLength >> 4))
        {
            _blocks.Add((Pack(_open.WrittenSpan), _open.WrittenCount));
            _open.ResetWrittenCount();
            FlatMemory.Keep();
        }
    }

    /// <summary>The rows in order, each as JSON.</summary>
    public IEnumerable<ReadOnlyMemory<byte>> Texts()
    {
        foreach (var block in _blocks.Select(Unpack).Append(_open.WrittenMemory))
        {
            for (var rest = block; rest.Length > 0;)
            {
                var end = rest.Span.IndexOf((byte)'\n');
                yield return rest[..end];
                rest = rest[(end + 1)..];
            }
        }
    }

    /// <summary>The rows in order.</summary>
    public IEnumerable<FileRow> Rows() => Texts().Select(t => RowJson.Read(t.Span));

    private static byte[] Pack(ReadOnlySpan<byte> text)
    {
        var packed = ArrayPool<byte>.Shared.Rent(BrotliEncoder.GetMaxCompressedLength(text.Length));
        var fits = BrotliEncoder.TryCompress(text, packed, out var length, Quality, Window);
        var kept = packed[..length];
        ArrayPool<byte>.Shared.Return(packed);
        return fits ? kept : throw new InvalidOperationException("rows could not be packed");
    }

    private static ReadOnlyMemory<byte> Unpack((byte[] Packed, int Length) block)
    {
        var text = new byte[block.Length];
        return BrotliDecoder.TryDecompress(block.Packed, text, out var length) && length == text.Length
            ? text
            : throw new InvalidOperationException("packed rows could not be read");
    }
}

/// <summary>A run to be brought in: what its header says, and its rows, which are gone through as often as needed.</summary>
/// <param name="Header">The run without its rows.</param>
/// <param name="Count">How many rows there are.</param>
/// <param name="Rows">The rows in order.</param>
/// <param name="Texts">The rows as JSON, where they are at hand so; else null.</param>
internal sealed record RunToImport(RunFile Header, int Count, IEnumerable<FileRow> Rows, IEnumerable<ReadOnlyMemory<byte>>? Texts = null)
{
    public static RunToImport Of(RunFile file) => new(file.WithoutRows(), file.Rows.Length, file.Contents());

    public static RunToImport Of(RunFile header, PackedRows rows) => new(header, rows.Count, rows.Rows(), rows.Texts());
}

/// <summary>A row alone as JSON on one line.</summary>
internal static class RowJson
{
    /// <summary>A person reads the journal, so letters beyond ASCII stand as they are.</summary>
    public static readonly JavaScriptEncoder Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;

    private static readonly JsonTypeInfo<FileRow> Row = new RowContext(new(RowContext.Default.Options) { Encoder = Encoder }).FileRow;

    public static byte[] Bytes(FileRow row) => JsonSerializer.SerializeToUtf8Bytes(row, Row);

    public static string Text(FileRow row) => JsonSerializer.Serialize(row, Row);

    /// <summary>Reads a row.</summary>
    /// <exception cref="InvalidDataException">It is none.</exception>
    public static FileRow Read(ReadOnlySpan<byte> json)
    {
        try
        {
            return FileRowJson.Read(json);
        }
        catch (JsonException e)
        {
            throw new InvalidDataException($"a row can't be read: {e.Message}", e);
        }
    }
}

/// <summary>What the JSON of a row is made from.</summary>
[JsonSerializable(typeof(FileRow))]
internal sealed partial class RowContext : JsonSerializerContext;
