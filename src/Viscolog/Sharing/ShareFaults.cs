using System.Text;
using Npgsql;
using Viscolog.Text;

namespace Viscolog.Sharing;

/// <summary>What goes wrong between here and the shared database.</summary>
internal static class ShareFaults
{
    /// <summary>
    /// Whether an exception says that the database can't be used now; it may be tried again, nothing is lost. Where bytes come twice or are
    /// missing on the way, the library throws what its readers of numbers and texts throw.
    /// </summary>
    public static bool Is(Exception e)
        => e is NpgsqlException or TimeoutException or InvalidOperationException or DecoderFallbackException or FormatException
            or OverflowException or IndexOutOfRangeException or ArgumentOutOfRangeException or InvalidCastException or NotSupportedException
            or EndOfStreamException;

    /// <summary>Whether it asks for a password, or for another one.</summary>
    public static bool AsksForPassword(Exception e)
        => e is PostgresException { SqlState: PostgresErrorCodes.InvalidPassword }
            || (e is NpgsqlException && e.Message.Contains("No password", StringComparison.OrdinalIgnoreCase));

    /// <summary>What to say of it.</summary>
    public static string Words(Exception e)
    {
        // What the server says, without the library's remark that it may say more; and what is inside often says the same again.
        var said = e is PostgresException answer ? $"{answer.MessageText} ({answer.SqlState})"
            : e.InnerException is { } inner && !e.Message.Contains(inner.Message, StringComparison.Ordinal)
                ? $"{e.Message}: {inner.Message}"
            : e.Message;
        return OneLine.Of(AsksForPassword(e)
            ? $"{said}; give the password in PGPASSWORD, in a passfile (PGPASSFILE), or at a terminal"
            : said);
    }
}
