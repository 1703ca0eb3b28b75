using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Batches;

/// <summary>A batch against its specification.</summary>
internal static class CheckScreen
{
    public static KeyTable<CheckEvent> Keys { get; } = new(
        "Check",
        new("Up/Down", "specification", "another specification", new CheckEvent.Chose(-1), new CheckEvent.Chose(1)),
        new("PgUp/PgDn", null, "scroll", new CheckEvent.Scrolled(-5), new CheckEvent.Scrolled(5)),
        new(
            "Home/End",
            null,
            "the beginning, the end",
            new CheckEvent.Scrolled(-Scrolling.ToEnd),
            new CheckEvent.Scrolled(Scrolling.ToEnd)),
        new("F4", "certified oil", "log a certified oil read by the run's method, to know the method's bias", new CheckEvent.OilCalled()),
        new("F7", "certificate", "write the certificate", new CheckEvent.CertificateCalled()),
        new("F9", "trend", "trend of the product", new CheckEvent.TrendCalled()),
        new("F1", "help", "") { Role = KeyRole.Helps },
        new("Esc", "back", "back") { Role = KeyRole.Leaves },
        new("^Q", "quit", "quit") { Role = KeyRole.Quits })
    {
        Above =
        [
            "The batch against a specification: its value at the reference temperature with its "
            + "uncertainty and what that is made of, the probability that it conforms, the verdict, "
            + "and what to do. Readings that had not settled, or are far from the others, don't count.",
        ],
    };

    public static ScreenView<CheckState, CheckEvent> On(TuiContext context, LoggedRun run)
    {
        var earlier = context.Log.Earlier(run.File.Run, run.Number);
        return new(
            context,
            new(_ => Keys, CheckSteps.Next, CheckPage.Of),
            CheckSteps.Open(run, BenchKnowledge.Of(context.Log), earlier, context.Today));
    }
}
