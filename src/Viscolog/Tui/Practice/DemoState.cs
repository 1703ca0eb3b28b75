using Viscolog.Core.Practice;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Practice;

/// <summary>The demonstration: three players on one pot, step by step or running.</summary>
/// <param name="Game">The pot.</param>
internal sealed record DemoState(PracticeGame Game)
{
    /// <summary>How long a step stands while it runs.</summary>
    public static readonly TimeSpan StepTime = TimeSpan.FromSeconds(4);

    /// <summary>What the three did; null while it is worked out.</summary>
    public Demonstration? Played { get; init; }

    /// <summary>The step shown, from 0; the last shows the end.</summary>
    public int Step { get; init; }

    /// <summary>When the next step is due while it runs; null while it stands.</summary>
    public DateTimeOffset? Due { get; init; }

    /// <summary>Whether the lesson is shown in the place of the players.</summary>
    public bool ShowsLesson { get; init; }

    /// <summary>Lines of the lesson above the screen.</summary>
    public Scrolling Above { get; init; }

    public string Said { get; init; } = "";

    public bool IsAtEnd => Played is { } played && Step >= played.StepCount;

    /// <summary>Another step.</summary>
    public DemoState Go(int by)
        => Played is not { } played
            ? this
            : this with { Step = Math.Clamp(Step + by, 0, played.StepCount), ShowsLesson = false, Said = "" };

    /// <summary>Runs, or stands.</summary>
    public DemoState Run(DateTimeOffset now)
        => Due is not null
            ? this with { Due = null }
            : (IsAtEnd ? this with { Step = 0 } : this) with { Due = now + StepTime, ShowsLesson = false };

    /// <summary>Time went by.</summary>
    public DemoState Tick(DateTimeOffset now)
    {
        if (Due is not { } due || now < due)
        {
            return this;
        }

        var next = Go(1);
        return next with { Due = next.IsAtEnd ? null : now + StepTime };
    }
}
