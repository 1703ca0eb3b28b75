using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Sharing;
using Viscolog.Wording;

namespace Viscolog.Cli.Share;

/// <summary>Shares the log with other benches through a database of theirs.</summary>
internal sealed class ShareCommand : CalledCommand
{
    public ShareCommand()
        : base(
            "share",
            "Share the log with other benches through a PostgreSQL database. Without a subcommand: "
                + "send what is new and fetch what others have.",
            ShareSetupCommand.Example)
    {
        foreach (var form in (Command[])
        [
            new ShareSetupCommand(), new ShareJoinCommand(), new ShareStatusCommand(), new ShareRunsCommand(), new ShareHandCommand(),
            new ShareTakeCommand(), new ShareLeaveCommand(),
        ])
        {
            Add(form);
        }
    }

    /// <summary>Sends and fetches once, and says so.</summary>
    public static ExitCode Go(Invocation call, ShareLink link, ShareServer server, string begin = "")
        => SharedLog.Go(
            call,
            link,
            server,
            round => call.Answer(
                () => new ShareAnswer(true)
                {
                    Address = round.Link.Address.Text(),
                    Bench = round.Link.Bench,
                    Life = round.Link.Life,
                    Sent = round.Report.Sent,
                    Fetched = round.Report.Fetched,
                    TakenBack = round.TakenBack,
                    State = round.Report.State,
                    LeftOut = round.Report.Faults.IsEmpty ? null : round.Report.Faults,
                },
                terminal =>
                {
                    var back = round.TakenBack == 0
                        ? ""
                        : $"{Count.Of(round.TakenBack, "line", "lines")} that this log had lost taken back, ";
                    terminal.Line(begin + back + $"{Count.Of(round.Report.Sent, "line", "lines")} sent, "
                        + FormattableString.Invariant($"{round.Report.Fetched} fetched; ")
                        + $"{Count.Of(round.Report.Benches, "other bench", "other benches")}, state {round.Report.State}");
                },
                round.Report.Faults));

    protected override ExitCode Run(Invocation call)
        => SharedLog.With(call, link => SharedLog.WithServer(call, link.Address, server => Go(call, link, server)));
}
