using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Npgsql;

namespace Viscolog.Tests.Support;

/// <summary>A PostgreSQL server of its own on the loopback, in a temporary folder, as the distribution's package installs it.</summary>
public class LocalPostgres : IDisposable
{
    private const string Installed = "/usr/lib/postgresql";

    private readonly string? _programs = Find();
    private readonly string _folder = Path.Combine(Path.GetTempPath(), $"viscolog-pg-{Guid.NewGuid():N}");
    private Process? _server;
    private readonly bool _hasDisk;
    private int _databases;

    /// <param name="megabytes">A disk of its own of that size, which only root can make; null for the usual one.</param>
    public LocalPostgres(int? megabytes = null)
    {
        if (_programs is null)
        {
            return;
        }

        Port = FreePort();
        Run("mkdir", _folder);
        if (megabytes is { } size)
        {
            RunAsRoot("mount", "-t", "tmpfs", "-o", FormattableString.Invariant($"size={size}m,mode=777"), "tmpfs", _folder);
            _hasDisk = true;
        }

        Run(Path.Combine(_programs, "initdb"), "-D", Data, "-A", "trust", "-U", "owner", "-E", "UTF8", "--locale=C", "--no-sync");
        Start();
    }

    public int Port { get; }

    private string Data => Path.Combine(_folder, "data");

    /// <summary>Whether there is one; without it nothing can be asked of it.</summary>
    public bool IsInstalled => _programs is not null;

    /// <summary>A database that can be shared, with a role for each bench.</summary>
    /// <param name="setup">The SQL of <c>share setup</c>.</param>
    /// <param name="benches">The names of the benches.</param>
    public SharedDatabase Database(string setup, params string[] benches)
        => new(this, $"d{Interlocked.Increment(ref _databases)}", setup, benches);

    public void Execute(string database, string sql, string user = "owner")
    {
        using var source = Source(database, user);
        using var command = source.CreateCommand(sql);
        command.ExecuteNonQuery();
    }

    public object? Scalar(string database, string sql, string user = "owner")
    {
        using var source = Source(database, user);
        using var command = source.CreateCommand(sql);
        return command.ExecuteScalar();
    }

    /// <summary>Ends the server as a power cut would, and starts it again.</summary>
    public void Crash()
    {
        Stop("immediate");
        Start();
    }

    /// <summary>Gives the server's own disk more room, and starts it again where it has ended for want of it.</summary>
    public void Grow(int megabytes)
    {
        RunAsRoot("mount", "-o", FormattableString.Invariant($"remount,size={megabytes}m"), _folder);
        WaitUntilReady();
    }

    /// <summary>Has the server ask a bench for this password; null to have it ask for none again.</summary>
    public void LockIn(string bench, SharedDatabase database, string? password)
    {
        var role = database.Role(bench);
        if (password is not null)
        {
            Execute(database.Name, $"alter role {role} password '{password}'");
        }

        var rule = password is null ? "" : $"host all {role} all scram-sha-256\n";
        Run("sh", "-c", $"printf '{rule}local all all trust\nhost all all all trust\n' > {Data}/pg_hba.conf");
        Run(Path.Combine(_programs!, "pg_ctl"), "reload", "-D", Data);
        Thread.Sleep(300);
    }

    public void Stop(string mode)
    {
        Run(Path.Combine(_programs!, "pg_ctl"), "stop", "-D", Data, "-m", mode, "-w");
        _server!.WaitForExit();
        _server.Dispose();
        _server = null;
    }

    public void Start()
    {
        Begin();
        WaitUntilReady();
    }

    private void Begin()
        => _server = Process.Start(Call(
            Path.Combine(_programs!, "postgres"),
            "-D", Data,
            "-p", FormattableString.Invariant($"{Port}"),
            "-c", "listen_addresses=127.0.0.1",
            "-c", $"unix_socket_directories={_folder}",
            "-c", "max_connections=200",
            "-c", "log_min_messages=fatal"))!;

    /// <summary>Waits while it recovers, and starts it again where it could not.</summary>
    private void WaitUntilReady()
    {
        for (var tries = 0; ; tries++)
        {
            try
            {
                Execute("postgres", "select 1");
                return;
            }
            catch (NpgsqlException) when (tries < 200)
            {
                if (_server!.WaitForExit(50))
                {
                    Begin();
                }
            }
        }
    }

    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    protected virtual void Dispose(bool disposing)
    {
        if (_server is not null)
        {
            Stop("immediate");
        }

        if (_hasDisk)
        {
            RunAsRoot("umount", _folder);
        }

        if (_programs is not null)
        {
            Run("rm", "-rf", _folder);
        }
    }

    private static string? Find()
        => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Concat(Directory.Exists(Installed) ? Directory.GetDirectories(Installed).Select(d => Path.Combine(d, "bin")) : [])
            .FirstOrDefault(d => File.Exists(Path.Combine(d, "initdb")) && File.Exists(Path.Combine(d, "postgres")));

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <summary>The server does not run as root; the package made a user for it.</summary>
    private static ProcessStartInfo Call(params string[] words)
    {
        string[] all = Environment.IsPrivilegedProcess ? ["runuser", "-u", "postgres", "--", .. words] : words;
        return new(all[0], all[1..])
        {
            UseShellExecute = false,
            WorkingDirectory = "/",
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
    }

    private static void Run(params string[] words) => Run(Call(words), words[0]);

    private static void RunAsRoot(params string[] words)
        => Run(
            new ProcessStartInfo(words[0], words[1..])
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            },
            words[0]);

    private static void Run(ProcessStartInfo call, string name)
    {
        using var process = Process.Start(call)!;
        var said = process.StandardOutput.ReadToEndAsync();
        var failed = process.StandardError.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"{name}: {failed} {said.Result}");
        }
    }

    private NpgsqlDataSource Source(string database, string user)
        => NpgsqlDataSource.Create(
            FormattableString.Invariant(
                $"Host=127.0.0.1;Port={Port};Database={database};Username={user};Pooling=false;SSL Mode=Disable;Timeout=5"));
}

/// <summary>A shared database on that server.</summary>
public sealed class SharedDatabase
{
    private readonly LocalPostgres _server;

    public SharedDatabase(LocalPostgres server, string name, string setup, string[] benches)
    {
        (_server, Name) = (server, name);
        server.Execute("postgres", $"create database {name}");
        server.Execute(name, setup);
        foreach (var bench in benches)
        {
            server.Execute(name, $"create role {Role(bench)} login in role viscolog_bench");
        }
    }

    public string Name { get; }

    public string Role(string bench) => $"{Name}_{bench}";

    public string Address(string bench, int? port = null)
        => FormattableString.Invariant($"postgresql://{Role(bench)}@127.0.0.1:{port ?? _server.Port}/{Name}?sslmode=disable");

    public void Execute(string sql) => _server.Execute(Name, sql);

    public void ExecuteAs(string bench, string sql) => _server.Execute(Name, sql, Role(bench));

    public object? Scalar(string sql) => _server.Scalar(Name, sql);

    public long Count(string sql) => (long)Scalar($"select count(*) from ({sql}) q")!;
}
