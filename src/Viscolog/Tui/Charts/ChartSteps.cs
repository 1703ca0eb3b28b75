using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Plots;
using Viscolog.Plots.Oxy;
using Viscolog.RunFiles;
using Viscolog.Tui.Pattern;
using ChartStep = Viscolog.Tui.Pattern.Step<Viscolog.Tui.Charts.ChartState, Viscolog.Tui.Charts.ChartEvent>;

namespace Viscolog.Tui.Charts;

/// <summary>The chart screen as a machine.</summary>
internal static class ChartSteps
{
    public static ChartStep Next(ChartState state, ChartEvent @event, DateTimeOffset now) => @event switch
    {
        ChartEvent.Turned => state with { Kind = After(state), Said = "" },
        ChartEvent.Exported => new ChartStep(state, Export(state)),
        ChartEvent.Told told => state with { Said = told.Said },
        _ => throw new ArgumentOutOfRangeException(nameof(@event), @event, "not a case of the closed set"),
    };

    private static PlotKind After(ChartState state)
    {
        var kinds = RunPlots.Kinds(state.Pictures);
        return kinds[(kinds.IndexOf(state.Kind) + 1) % kinds.Length];
    }

    private static Export<ChartEvent> Export(ChartState state) => new(
        PathForm.Picture(
            RunFileName.Plain(state.Pictures is [var only] ? only.Name ?? "run" : "runs") + "-" + state.Kind.ToString().ToLowerInvariant()),
        (path, replace, _) => PictureFile.Write(RunPlots.Of(state.Pictures, state.Kind), path, replace),
        said => new ChartEvent.Told(said));
}

/// <summary>The chart screen: one run or several.</summary>
/// <param name="Pictures">What is drawn.</param>
internal sealed record ChartState(ImmutableArray<RunPicture> Pictures)
{
    public PlotKind Kind { get; init; } = PlotKind.Dose;

    public string Said { get; init; } = "";
}

/// <summary>What can happen on the chart screen. The set of cases is closed.</summary>
internal abstract record ChartEvent
{
    private ChartEvent()
    {
    }

    /// <summary>The next picture was called for.</summary>
    internal sealed record Turned : ChartEvent;

    /// <summary>The picture is to be written to a file.</summary>
    internal sealed record Exported : ChartEvent;

    /// <summary>What became of the file.</summary>
    internal sealed record Told(string Said) : ChartEvent;
}
