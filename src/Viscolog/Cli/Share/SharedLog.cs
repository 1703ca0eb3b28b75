using Viscolog.Cli.Calls;
using Viscolog.Sharing;
using Viscolog.Store;
using Viscolog.Text;

namespace Viscolog.Cli.Share;

/// <summary>What the commands that share have in common.</summary>
internal static class SharedLog
{
    /// <summary>What to say of a log that is not shared.</summary>
    public const string NotJoined = "this log is not shared; 'viscolog share join postgresql://… --bench NAME' joins it";

    /// <summary>Does something with a log that is shared.</summary>
    public static ExitCode With(Invocation call, Func<ShareLink, ExitCode> act)
    {
        var (link, fault) = ShareLink.Read(call.Log);
        return fault is not null ? call.LogFailed(fault) : link is null ? call.Refuse(NotJoined) : act(link);
    }

    /// <summary>Does something with the shared database, and says why where that can't be.</summary>
    public static ExitCode WithServer(Invocation call, ShareAddress address, Func<ShareServer, ExitCode> act)
    {
        try
        {
            if (address.Caution is { } caution)
            {
                call.Warn([caution]);
            }

            using var server = Connect(call, address);
            return act(server);
        }
        catch (ShareRefused e)
        {
            return call.Refuse(OneLine.Of(e.Message));
        }
        catch (Exception e) when (ShareFaults.Is(e))
        {
            var then = File.Exists(ShareLink.PathOf(call.Log))
                ? "nothing is lost, and what is logged meanwhile is sent later"
                : "the log is as it was, and not shared";
            return call.LogFailed($"the shared database at {address.Host} can't be used: {ShareFaults.Words(e)}; {then}");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return call.LogFailed($"what other benches have can't be kept in {call.Log.Folder}: {OneLine.Of(e.Message)}; the log is whole");
        }
    }

    /// <summary>One round: sends, fetches, and takes back what this log has lost; then what it did is answered.</summary>
    public static ExitCode Go(Invocation call, ShareLink link, ShareServer server, Func<Round, ExitCode> answer)
        => call.WithLog(LogUse.Write, log => Go(call, log, link, server, answer));

    private static ExitCode Go(Invocation call, BenchLog log, ShareLink link, ShareServer server, Func<Round, ExitCode> answer)
    {
        var round = new ShareRound(log.Place, log.Id, call.Clock) { Link = link };
        var report = round.Go(server, log.Sound.Length);
        var lost = report.Lost;
        if (lost > 0)
        {
            if (log.TakeBack(server.Lines(new(log.Id, round.Link.Life), log.Sound.Lines).Select(l => l.Text)) is { } fault)
            {
                return call.LogFailed($"lines that this log has lost can't be taken back: {fault}");
            }

            log.Dispose();
            report = round.Go(server, new FileInfo(log.Place.Journal).Length);
        }

        return answer(new(report, round.Link, lost));
    }

    private static ShareServer Connect(Invocation call, ShareAddress address)
    {
        try
        {
            return ShareServer.Connect(address, null);
        }
        catch (Exception e) when (
            ShareFaults.AsksForPassword(e) && Asked(call, address) is { Length: > 0 } typed)
        {
            return ShareServer.Connect(address, typed);
        }
    }

    private static string? Asked(Invocation call, ShareAddress address)
    {
        // A line that counts the seconds would stand over the question.
        call.Terminal.EndWork();
        return call.Surroundings.Secret($"password for {address.Host}: ");
    }

    /// <summary>What a round did.</summary>
    /// <param name="Report">Sent and fetched.</param>
    /// <param name="Link">How the log is shared now.</param>
    /// <param name="TakenBack">Lines that were taken back.</param>
    internal sealed record Round(ShareReport Report, ShareLink Link, long TakenBack);
}
