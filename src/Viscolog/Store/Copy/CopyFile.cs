using System.Buffers.Binary;
using System.Text.Json;
using LiteDB;

namespace Viscolog.Store.Copy;

/// <summary>The file of the query copy as bytes: what may be opened, since LiteDB writes over a file that is none of its own.</summary>
internal static class CopyFile
{
    /// <summary>The version of what the documents hold; another one is made anew from the journal.</summary>
    public const int Schema = 2;

    // Version 1 has no blocks of rows; it is read, and written on, as it is.
    private const int Oldest = 1;

    private const int PageLength = 8192;
    private const int Mark = 0x56490000;

    private const int TitleAt = 32;
    private const int FormatAt = 59;
    private const int UserVersionAt = 76;

    private static ReadOnlySpan<byte> Title => "** This is a LiteDB file **"u8;

    /// <summary>What stands under a name.</summary>
    public static CopyState StateOf(string path)
    {
        if (Directory.Exists(path))
        {
            return CopyState.Foreign;
        }

        if (!File.Exists(path))
        {
            return CopyState.Missing;
        }

        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        var head = new byte[UserVersionAt + 4];
        if (stream.Length == 0)
        {
            return CopyState.Missing;
        }

        var read = stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
        if (read < head.Length)
        {
            return CopyState.Foreign;
        }

        if (!head.AsSpan(TitleAt, Title.Length).SequenceEqual(Title))
        {
            // A page that was never written is a power cut's work, not somebody's file.
            return head.AsSpan().ContainsAnyExcept((byte)0) ? CopyState.Foreign : CopyState.Damaged;
        }

        var version = BinaryPrimitives.ReadInt32LittleEndian(head.AsSpan(UserVersionAt));
        return (version ^ Mark) switch
        {
            < 0 or > 0xffff => CopyState.Foreign,
            > Schema => CopyState.Newer,
            < Oldest => CopyState.Older,
            _ => head[FormatAt] == 8 && stream.Length % PageLength == 0 ? CopyState.Ours : CopyState.Damaged,
        };
    }

    /// <summary>Makes an empty query copy.</summary>
    public static QueryCopy Create(string path)
    {
        var database = Database(path, readOnly: false);
        database.UserVersion = Mark | Schema;
        database.Checkpoint();
        return QueryCopy.Create(database);
    }

    /// <summary>Makes an empty query copy in memory.</summary>
    public static QueryCopy CreateInMemory() => QueryCopy.Create(Database(":memory:", readOnly: false));

    /// <summary>Opens one whose state is <see cref="CopyState.Ours"/>.</summary>
    public static QueryCopy Open(string path, bool readOnly)
    {
        var database = Database(path, readOnly);
        if (!readOnly && database.UserVersion != (Mark | Schema))
        {
            database.UserVersion = Mark | Schema;
        }

        return new(database);
    }

    private static LiteDatabase Database(string path, bool readOnly)
        => new(new ConnectionString { Filename = path, ReadOnly = readOnly, Collation = readOnly ? null : Collation.Binary }, Mapper());

    private static BsonMapper Mapper()
    {
        var mapper = new BsonMapper
        {
            // As they come these two would change texts.
            EmptyStringToNull = false,
            TrimWhitespace = false,
            ResolveFieldName = name => name == "Id" ? "_id" : JsonNamingPolicy.SnakeCaseLower.ConvertName(name),
        };
        mapper.RegisterType(RowDoc.ToBson, RowDoc.OfBson);
        return mapper;
    }
}

/// <summary>What stands in the place of the query copy.</summary>
internal enum CopyState
{
    /// <summary>Nothing, or a file without a byte in it.</summary>
    Missing,

    /// <summary>A query copy of this program's version.</summary>
    Ours,

    /// <summary>A query copy of an older version.</summary>
    Older,

    /// <summary>A query copy of a newer version.</summary>
    Newer,

    /// <summary>A query copy that is not whole.</summary>
    Damaged,

    /// <summary>Something else, which is not ours to change.</summary>
    Foreign,
}
