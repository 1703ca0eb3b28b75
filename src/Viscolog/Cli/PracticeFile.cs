using Viscolog.Core.Practice;
using Viscolog.Plots;

namespace Viscolog.Cli;

/// <summary>Practice games into a file that is named on the command line.</summary>
internal static class PracticeFile
{
    public static ExitCode Write(Invocation call, IReadOnlyList<NamedPath> players, string path, bool force)
    {
        switch (PlotFile.Write(players, path, force))
        {
            case PlotOutcome.Refused refused:
                return call.Refuse(refused.Reason);
            case PlotOutcome.Written written:
                call.Note($"written: {written.Path}");
                return ExitCode.Done;
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }
}
