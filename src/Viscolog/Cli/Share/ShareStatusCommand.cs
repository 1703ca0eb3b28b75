using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Store;

namespace Viscolog.Cli.Share;

/// <summary>Says how the log is shared, without asking anybody.</summary>
internal sealed class ShareStatusCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- share status";

    public ShareStatusCommand()
        : base("status", "Say whether and how the log is shared, and how fresh is what is known of other benches.", Example)
    {
    }

    protected override ExitCode Run(Invocation call)
    {
        var (link, fault) = Sharing.ShareLink.Read(call.Log);
        if (fault is not null)
        {
            return call.LogFailed(fault);
        }

        var list = new Mirrors(call.Log).Read();
        string[] names = [.. list.Benches.Select(b => b.Name).Distinct(StringComparer.Ordinal)];
        return call.Answer(
            () => link is null
                ? new ShareAnswer(false)
                : new ShareAnswer(true)
                {
                    Address = link.Address.Text(),
                    Bench = link.Bench,
                    Life = link.Life,
                    Asked = list.Fetched?.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture),
                    Benches = names,
                },
            terminal =>
            {
                if (link is null)
                {
                    terminal.Line(SharedLog.NotJoined);
                    return;
                }

                terminal.Line($"shared as '{link.Bench}' at {link.Address.Host}"
                    + (link.Life == 1 ? "" : FormattableString.Invariant($", life {link.Life}: the log was put back from a backup")));
                terminal.Line(list.Fetched is { } at
                    ? $"other benches asked {at.ToLocalTime().ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)}: "
                        + (names.Length == 0 ? "none has sent anything" : string.Join(", ", names))
                    : "other benches were not asked yet");
            });
    }
}
