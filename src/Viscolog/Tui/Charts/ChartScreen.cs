using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Charts;

/// <summary>The chart alone, of one run or several.</summary>
internal static class ChartScreen
{
    public static KeyTable<ChartEvent> Keys { get; } = new(
        "Chart",
        new(
            "F6",
            "next picture",
            "the next picture: dose, the way to each settled value, residuals, string length",
            new ChartEvent.Turned()),
        new("F7", "export SVG, PDF or PNG", "export the one in sight to SVG, PDF or PNG", new ChartEvent.Exported()),
        new("Esc", "back", "back") { Role = KeyRole.Leaves },
        new("^Q", "quit", "quit") { Role = KeyRole.Quits });

    public static ScreenView<ChartState, ChartEvent> On(TuiContext context, ImmutableArray<RunPicture> pictures)
        => new(context, new(_ => Keys, ChartSteps.Next, ChartPage.Of), new ChartState(pictures));
}
