using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Sharing;
using Viscolog.Store;

namespace Viscolog.Cli.Share;

/// <summary>Ends sharing.</summary>
internal sealed class ShareLeaveCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- share leave";

    public ShareLeaveCommand()
        : base("leave", "Share the log no more: nothing is sent or fetched, what was fetched is deleted; the log stays whole.", Example)
    {
    }

    protected override ExitCode Run(Invocation call)
    {
        try
        {
            if (!File.Exists(ShareLink.PathOf(call.Log)))
            {
                return call.Refuse(SharedLog.NotJoined);
            }

            ShareLink.Delete(call.Log);
            new Mirrors(call.Log).Delete();
            PracticeScores.Beside(call.Log).ForgetShared();
            return call.Answer(
                () => new ShareAnswer(false),
                terminal => terminal.Line("the log is shared no more; what was sent stays where it is"));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return call.LogFailed(Text.OneLine.Of(e.Message));
        }
    }
}
