using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Npgsql;
using NpgsqlTypes;
using Viscolog.Store;

namespace Viscolog.Sharing;

/// <summary>
/// The shared database over one connection: what can be asked of it and added to it. Names and texts go along as parameters, never as SQL.
/// </summary>
internal sealed class ShareServer : IDisposable
{
    /// <summary>The version of the schema that this program knows.</summary>
    public const int Version = 1;

    private const int LinesAtOnce = 2000;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly NpgsqlDataSource _source;
    private readonly NpgsqlConnection _connection;

    private ShareServer(NpgsqlDataSource source, NpgsqlConnection connection) => (_source, _connection) = (source, connection);

    /// <summary>Connects, and sees that the database is one that can be shared and that this role can spoil nothing.</summary>
    /// <exception cref="NpgsqlException">It can't be reached, or does not let this role in.</exception>
    /// <exception cref="ShareRefused">It is no such database, or the role may do too much.</exception>
    public static ShareServer Connect(ShareAddress address, string? password)
    {
        var source = address.Source(password, Patience);
        try
        {
            var server = new ShareServer(source, source.OpenConnection());
            server.CheckVersion();
            server.CheckRights();
            return server;
        }
        catch (Exception)
        {
            source.Dispose();
            throw;
        }
    }

    /// <summary>Enters a bench, or a further key of one that is entered.</summary>
    /// <param name="log">Its log.</param>
    /// <param name="name">Its name.</param>
    /// <param name="keySum">What the server keeps of its key.</param>
    /// <param name="again">Whether it may have been entered before, with a key that was lost.</param>
    /// <exception cref="ShareRefused">The name is another's, or the log is entered and that was not said.</exception>
    public void Join(Guid log, string name, byte[] keySum, bool again)
    {
        using var transaction = _connection.BeginTransaction();
        var known = Scalar("select name from viscolog.bench where log = $1", log) as string;
        if (known is not null && !again)
        {
            throw new ShareRefused($"this log was joined already, as '{known}', by another folder or before it was put back; "
                + "if no other bench "
                + "writes this log any more, join with --again");
        }

        if (known is not null && known != name)
        {
            throw new ShareRefused($"this log was joined as '{known}'; join with --bench \"{known}\"");
        }

        try
        {
            if (known is null)
            {
                Execute("insert into viscolog.bench (log, name) values ($1, $2)", log, name);
            }

            Execute(
                "insert into viscolog.bench_key (log, number, sha256) "
                    + "values ($1, coalesce((select max(number) from viscolog.bench_key where log = $1), 0) + 1, $2)",
                log,
                keySum);
            transaction.Commit();
        }
        catch (PostgresException e) when (e.SqlState == PostgresErrorCodes.UniqueViolation)
        {
            throw new ShareRefused($"another bench is called '{name}' already; give this one another name", e);
        }
        catch (PostgresException e) when (e.SqlState == PostgresErrorCodes.InsufficientPrivilege)
        {
            throw new ShareRefused($"'{name}' was joined by another role; connect as that one", e);
        }
    }

    /// <summary>Whether the key that counts is this one.</summary>
    public bool Knows(Guid log, byte[] keySum)
        => Scalar("select sha256 from viscolog.bench_key where log = $1 order by number desc limit 1", log) is byte[] held
            && held.AsSpan().SequenceEqual(keySum);

    /// <summary>The last line that there is of a stream; null where there is none.</summary>
    public (long Number, string Text)? Last(BenchStream stream) => Line(stream, null);

    /// <summary>A line of a stream; null where it is not there.</summary>
    public string? Line(BenchStream stream, long number) => Line(stream, (long?)number)?.Text;

    /// <summary>The latest life of a log that something was sent of; 0 where nothing was.</summary>
    public int LastLife(Guid log) => Scalar("select max(life) from viscolog.line where log = $1", log) as int? ?? 0;

    /// <summary>Adds lines, each once, all of those of a transaction or none; how many that were.</summary>
    /// <exception cref="NpgsqlException">It was not done, or nobody knows whether it was; sending them again does no harm.</exception>
    public long Send(BenchStream stream, IEnumerable<(long Number, string Text)> lines)
    {
        var sent = 0L;
        foreach (var some in lines.Chunk(LinesAtOnce))
        {
            using var transaction = _connection.BeginTransaction();
            using var command = Command(
                "insert into viscolog.line (log, life, number, text) select $1, $2, n, t from unnest($3::bigint[], $4::text[]) as s (n, t) "
                    + "on conflict do nothing",
                stream.Log,
                stream.Life,
                some.Select(l => l.Number).ToArray(),
                some.Select(l => l.Text).ToArray());
            sent += command.ExecuteNonQuery();
            Execute("select pg_notify('viscolog', $1)", stream.Text);
            transaction.Commit();
        }

        return sent;
    }

    /// <summary>The benches, each with the life that it is in and how many lines there are of that.</summary>
    public ImmutableArray<(SharedBench Bench, long Lines)> Benches()
    {
        using var command = Command(
            "select b.log, b.name, h.life, h.number from viscolog.bench b cross join lateral "
                + "(select life, number from viscolog.line l where l.log = b.log "
                + "order by life desc, number desc limit 1) h order by b.log");
        using var reader = command.ExecuteReader();
        var benches = ImmutableArray.CreateBuilder<(SharedBench, long)>();
        while (reader.Read())
        {
            benches.Add((new(new(reader.GetGuid(0), reader.GetInt32(2)), reader.GetString(1)), reader.GetInt64(3)));
        }

        return benches.ToImmutable();
    }

    /// <summary>The lines of a stream behind a number, in order, as they come.</summary>
    public IEnumerable<(long Number, string Text)> Lines(BenchStream stream, long behind)
    {
        using var command = Command(
            "select number, text from viscolog.line where log = $1 and life = $2 and number > $3 order by number",
            stream.Log,
            stream.Life,
            behind);
        using var reader = command.ExecuteReader(System.Data.CommandBehavior.SequentialAccess);
        while (reader.Read())
        {
            yield return (reader.GetInt64(0), reader.GetString(1));
        }
    }

    /// <summary>The practice games that there are of a log.</summary>
    public HashSet<Guid> GamesOf(Guid log)
    {
        using var command = Command("select id from viscolog.game where log = $1", log);
        using var reader = command.ExecuteReader();
        var ids = new HashSet<Guid>();
        while (reader.Read())
        {
            ids.Add(reader.GetGuid(0));
        }

        return ids;
    }

    /// <summary>Adds a practice game, once.</summary>
    public void Send(Guid log, Guid game, string result)
        => Execute(
            "with sent as (insert into viscolog.game (id, log, result) values ($1, $2, $3) on conflict do nothing returning id) "
                + "select pg_notify('viscolog', id::text) from sent",
            game,
            log,
            result);

    /// <summary>The practice games of other benches, but for those that are known.</summary>
    public IEnumerable<(Guid Id, string Result)> Games(Guid log, Guid[] known)
    {
        using var command = Command("select id, result from viscolog.game where log <> $1 and not id = any ($2) order by id", log, known);
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            yield return (reader.GetGuid(0), reader.GetString(1));
        }
    }

    /// <summary>Has the server say when somebody adds something.</summary>
    public void Listen() => Execute("listen viscolog");

    /// <summary>Waits until it says so, or for a while; whether it did.</summary>
    public bool Wait(TimeSpan time) => _connection.Wait(time);

    public void Dispose()
    {
        _connection.Dispose();
        _source.Dispose();
    }

    private void CheckVersion()
    {
        if (Scalar("select to_regclass('viscolog.about')::text") is not string)
        {
            throw new ShareRefused("the database holds nothing to share into, or this role may not see it; its owner runs "
                + "'viscolog share setup | psql DATABASE' once, and 'viscolog share setup --bench NAME' for each bench");
        }

        var version = Scalar("select max(version) from viscolog.about") as int? ?? 0;
        if (version != Version)
        {
            throw new ShareRefused(version > Version
                ? FormattableString.Invariant(
                    $"the shared database is of version {version}, this program knows {Version}: a newer one is needed")
                : FormattableString.Invariant($"the shared database is of version {version}, which is none that this program knows"));
        }
    }

    /// <summary>A bench adds and reads; a role that could change or delete what others rely on is not used.</summary>
    private void CheckRights()
    {
        var may = Scalar(
            "select string_agg(t || ': ' || p, ', ') from unnest(array['viscolog.line', 'viscolog.game', "
                + "'viscolog.bench', 'viscolog.bench_key']) t, "
                + "unnest(array['UPDATE', 'DELETE', 'TRUNCATE']) p where has_table_privilege(current_user, t, p)") as string;
        var isMighty = Scalar("select rolsuper or rolbypassrls from pg_roles where rolname = current_user") is true;
        if (may is not null || isMighty)
        {
            throw new ShareRefused("this role may change or delete what benches share; a bench's role only adds and reads. "
                + "'viscolog share setup --bench NAME' prints what makes one");
        }
    }

    private (long Number, string Text)? Line(BenchStream stream, long? number)
    {
        using var command = Command(
            "select number, text from viscolog.line where log = $1 and life = $2 and ($3::bigint is null or number = $3) "
                + "order by number desc limit 1",
            stream.Log,
            stream.Life,
            new NpgsqlParameter { NpgsqlDbType = NpgsqlDbType.Bigint, Value = number is { } n ? n : DBNull.Value });
        using var reader = command.ExecuteReader();
        return reader.Read() ? (reader.GetInt64(0), reader.GetString(1)) : null;
    }

    private object? Scalar(string sql, params object[] values)
    {
        using var command = Command(sql, values);
        return command.ExecuteScalar() is { } found and not DBNull ? found : null;
    }

    private void Execute(string sql, params object[] values)
    {
        using var command = Command(sql, values);
        command.ExecuteNonQuery();
    }

    [
        SuppressMessage(
            "Security", "CA2100", Justification = "The SQL is written above, word for word; what comes from outside is a parameter."),
    ]
    private NpgsqlCommand Command(string sql, params object[] values)
    {
        var command = new NpgsqlCommand(sql, _connection);
        foreach (var value in values)
        {
            command.Parameters.Add(value as NpgsqlParameter ?? new NpgsqlParameter { Value = value });
        }

        return command;
    }
}

/// <summary>Why something can't be shared, in words.</summary>
internal sealed class ShareRefused : Exception
{
    public ShareRefused(string message)
        : base(message)
    {
    }

    public ShareRefused()
    {
    }

    public ShareRefused(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
