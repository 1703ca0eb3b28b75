using Viscolog.Tests.Support;

namespace Viscolog.Tests.Sharing;

/// <summary>The server of the tests; where PostgreSQL is not installed those that need it are skipped and say so.</summary>
public sealed class PostgresServer : LocalPostgres
{
    public PostgresServer()
    {
    }

    private PostgresServer(int megabytes)
        : base(megabytes)
    {
    }

    /// <summary>One on a disk of its own that is soon full.</summary>
    public static PostgresServer OnSmallDisk(int megabytes) => new(megabytes);

    public void Need()
        => Assert.SkipUnless(IsInstalled, "PostgreSQL is not installed (no program 'initdb'): sharing was not tried against a server");

    /// <summary>A database that can be shared, with a role for each bench.</summary>
    public SharedDatabase Database(params string[] benches) => Database(Called.With("share", "setup").Output, benches);
}

/// <summary>Tests that share one server, one after the other.</summary>
[CollectionDefinition(Name)]
public sealed class PostgresTests : ICollectionFixture<PostgresServer>
{
    public const string Name = "postgres";
}
