using Viscolog.Store;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Batches;

/// <summary>A product's batches over time.</summary>
internal static class TrendScreen
{
    public static KeyTable<TrendEvent> Keys { get; } = new(
        "Trend",
        new("Up/Down", "product", "another product", new TrendEvent.Chose(-1), new TrendEvent.Chose(1)),
        new("PgUp/PgDn", null, "scroll", new TrendEvent.Scrolled(-3), new TrendEvent.Scrolled(3)),
        new(
            "Home/End",
            null,
            "the beginning, the end",
            new TrendEvent.Scrolled(-Scrolling.ToEnd),
            new TrendEvent.Scrolled(Scrolling.ToEnd)),
        new("F6", "log or linear", "log or linear scale", new TrendEvent.Turned()),
        new("F7", "export", "export SVG, PDF or PNG", new TrendEvent.Exported()),
        new("F1", "help", "") { Role = KeyRole.Helps },
        new("Esc", "back", "back") { Role = KeyRole.Leaves },
        new("^Q", "quit", "quit") { Role = KeyRole.Quits })
    {
        Above =
        [
            "A product's batches in their order, each at the value that its check finds; below them "
            + "the moving range from each to the next. Limits from the first 20.",
            "Signals: one point beyond the limits; two of three beyond two thirds of the way to one; "
            + "four of five beyond one third of the way; eight in a row on one side of the mean.",
        ],
    };

    /// <summary>Opens it on a product.</summary>
    /// <param name="context">What every screen needs.</param>
    /// <param name="name">The product, or a run of it; null for the first.</param>
    public static ScreenView<TrendState, TrendEvent> On(TuiContext context, string? name)
        => new(
            context,
            new(_ => Keys, TrendSteps.Next, TrendPage.Of),
            TrendSteps.Open(TrendState.Of(BenchKnowledge.Of(context.Log).Materials, name)));
}
