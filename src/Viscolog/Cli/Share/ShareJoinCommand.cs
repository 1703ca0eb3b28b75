using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Sharing;
using Viscolog.Store;

namespace Viscolog.Cli.Share;

/// <summary>Joins the benches that share a database.</summary>
internal sealed class ShareJoinCommand : CalledCommand
{
    public const string Example =
        "dotnet run --project src/Viscolog -- share join postgresql://viscolog_north@db.example/paint --bench north";

    private readonly Argument<string> _address = new("ADDRESS")
    {
        Description = "The shared database: postgresql://ROLE@HOST:PORT/DATABASE, without a password.",
    };

    private readonly Option<string?> _bench = TextOption.Create("--bench", "NAME", "What this bench is called.");

    private readonly Option<bool> _again = FlagOption.Create(
        "--again", "This log was joined before, and the folder that did so is gone or was put back from a backup.");

    public ShareJoinCommand()
        : base("join", "Share this log from now on: everything in it is sent, and what other benches have is fetched.", Example)
    {
        _bench.Required = true;
        Take(_address, _bench, _again);
    }

    protected override ExitCode Run(Invocation call)
    {
        var name = call.Value(_bench)!;
        if (!ShareLink.CanName(name))
        {
            return call.Wrong("--bench: a name of 1 to 60 characters");
        }

        if (!ShareAddress.Read(call.Value(_address)).Is(out var address, out var fault))
        {
            return call.Wrong(fault);
        }

        if (ShareLink.Read(call.Log) is { Link: { } known })
        {
            return call.Refuse($"this log is shared already, as '{known.Bench}' at {known.Address.Host}; 'viscolog share leave' ends that");
        }

        return SharedLog.WithServer(call, address, server =>
        {
            var link = ShareLink.New(address, name);
            using (var log = call.OpenLog(LogUse.Write))
            {
                if (log is null)
                {
                    return ExitCode.LogUnusable;
                }

                // Kept before it is sent: a key that the server knows and nobody has would shut this bench out.
                link.Write(log.Place);
                try
                {
                    server.Join(log.Id, name, link.KeySum, call.Value(_again));
                }
                catch (Exception)
                {
                    ShareLink.Delete(log.Place);
                    throw;
                }
            }

            return ShareCommand.Go(call, link, server, $"joined as '{name}': ");
        });
    }
}
