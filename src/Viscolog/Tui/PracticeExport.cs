using Viscolog.Core.Practice;
using Viscolog.Plots;

namespace Viscolog.Tui;

/// <summary>Practice games into a file that a screen asked for.</summary>
internal static class PracticeExport
{
    /// <summary>Writes it; says what became of it.</summary>
    public static string Write(IReadOnlyList<NamedPath> players, string path) => PlotFile.Write(players, path, force: false) switch
    {
        PlotOutcome.Written written => $"written: {written.Path}",
        PlotOutcome.Refused refused => refused.Reason,
        _ => "",
    };
}
