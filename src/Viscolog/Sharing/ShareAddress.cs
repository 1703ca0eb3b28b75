using System.Globalization;
using System.Net;
using Npgsql;
using Viscolog.Output;
using Viscolog.Text;

namespace Viscolog.Sharing;

/// <summary>
/// Where a shared database is, as PostgreSQL writes it: <c>postgresql://USER@HOST:PORT/DATABASE</c>, with no secret in it.
/// </summary>
/// <param name="Host">The server.</param>
/// <param name="Port">Its port.</param>
/// <param name="User">The role to connect as; null for the one of the environment.</param>
/// <param name="Database">The database.</param>
/// <param name="Mode">Whether the server has to prove who it is.</param>
/// <param name="RootCertificate">The certificate that vouches for it; null for those of the system.</param>
internal sealed record ShareAddress(string Host, int Port, string? User, string Database, SslMode Mode, string? RootCertificate)
{
    private const string Form =
        "postgresql://USER@HOST:PORT/DATABASE, then ?sslmode=verify-full (the default), verify-ca, require or disable"
        + " and sslrootcert=FILE where the server's certificate is your own";

    private static readonly Dictionary<string, SslMode> Modes = new(StringComparer.Ordinal)
    {
        ["verify-full"] = SslMode.VerifyFull,
        ["verify-ca"] = SslMode.VerifyCA,
        ["require"] = SslMode.Require,
        ["disable"] = SslMode.Disable,
    };

    /// <summary>What is less safe than it might be; null where nothing is.</summary>
    public string? Caution => Mode switch
    {
        SslMode.Disable when !IsThisMachine => "what is sent to the server can be read and changed on the way (sslmode=disable)",
        SslMode.Require => "what is sent is encrypted, but the server proves nothing (sslmode=require)",
        _ => null,
    };

    private bool IsThisMachine => Host == "localhost" || (IPAddress.TryParse(Host, out var ip) && IPAddress.IsLoopback(ip));

    /// <summary>The address that a text names.</summary>
    public static Outcome<ShareAddress> Read(string text)
    {
        if (!Uri.TryCreate(text.Trim(), UriKind.Absolute, out var uri) || uri.Scheme is not ("postgresql" or "postgres")
            || uri.Host.Length == 0 || uri.AbsolutePath.Length < 2)
        {
            return new Refused($"read {OneLine.Quoted(text)}, expected {Form}");
        }

        if (uri.UserInfo.Contains(':', StringComparison.Ordinal))
        {
            return new Refused("a password does not belong in the address: put it into the variable PGPASSWORD or a passfile (PGPASSFILE), "
                + "or type it when it is asked for");
        }

        var (mode, root) = (SslMode.VerifyFull, (string?)null);
        foreach (var part in uri.Query.TrimStart('?').Split('&', StringSplitOptions.RemoveEmptyEntries))
        {
            var (key, value) = part.Split('=', 2) is [var k, var v] ? (k, Uri.UnescapeDataString(v)) : (part, "");
            if (key == "sslmode" && Modes.TryGetValue(value, out var named))
            {
                mode = named;
            }
            else if (key == "sslrootcert" && value.Length > 0)
            {
                root = value;
            }
            else
            {
                return new Refused($"read {OneLine.Quoted(part)} in the address, expected {Form}");
            }
        }

        return new ShareAddress(
            uri.Host.Trim('[', ']'),
            uri.Port > 0 ? uri.Port : 5432,
            uri.UserInfo.Length > 0 ? Uri.UnescapeDataString(uri.UserInfo) : null,
            Uri.UnescapeDataString(uri.AbsolutePath[1..]),
            mode,
            root);
    }

    /// <summary>The address as it is kept.</summary>
    public string Text()
    {
        var user = User is null ? "" : Uri.EscapeDataString(User) + "@";
        var host = Host.Contains(':', StringComparison.Ordinal) ? $"[{Host}]" : Host;
        var root = RootCertificate is null ? "" : "&sslrootcert=" + Uri.EscapeDataString(RootCertificate);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"postgresql://{user}{host}:{Port}/{Uri.EscapeDataString(Database)}?sslmode={Modes.First(m => m.Value == Mode).Key}{root}");
    }

    /// <summary>
    /// What connects there. Secrets that are not given come from the environment, as PostgreSQL's own programs take them.
    /// </summary>
    /// <param name="password">The password; null for what the environment says.</param>
    /// <param name="patience">How long to wait for the server to let this bench in; many may ask at once.</param>
    public NpgsqlDataSource Source(string? password, TimeSpan patience)
    {
        var settings = new NpgsqlConnectionStringBuilder
        {
            Host = Host,
            Port = Port,
            Database = Database,
            SslMode = Mode,
            Timeout = (int)patience.TotalSeconds,
            CommandTimeout = 60,
            KeepAlive = 10,
            ApplicationName = "viscolog",
            Pooling = false,
        };
        if (User is not null)
        {
            settings.Username = User;
        }

        if (RootCertificate is not null)
        {
            settings.RootCertificate = RootCertificate;
        }

        if (password is not null)
        {
            settings.Password = password;
        }

        return NpgsqlDataSource.Create(settings);
    }
}
