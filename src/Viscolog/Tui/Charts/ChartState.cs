using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Plots;

namespace Viscolog.Tui.Charts;

/// <summary>The chart screen: one run or several.</summary>
/// <param name="Pictures">What is drawn.</param>
internal sealed record ChartState(ImmutableArray<RunPicture> Pictures)
{
    public PlotKind Kind { get; init; } = PlotKind.Dose;

    public string Said { get; init; } = "";

    public ChartState Next() => this with { Kind = (PlotKind)(((int)Kind + 1) % Enum.GetValues<PlotKind>().Length) };
}
