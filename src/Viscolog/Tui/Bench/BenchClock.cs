using Viscolog.Store.Copy;

namespace Viscolog.Tui.Bench;

/// <summary>Stirring and standing since the last thing went into the pot.</summary>
internal sealed record BenchClock
{
    /// <summary>When stirring began; null before.</summary>
    public DateTimeOffset? StirBegan { get; init; }

    /// <summary>When stirring ended and standing began; null before.</summary>
    public DateTimeOffset? StirEnded { get; init; }

    /// <summary>Standing time at which to read; null where nothing asks for one.</summary>
    public TimeSpan? Due { get; init; }

    /// <summary>Whether that moment was told of.</summary>
    public bool HasRung { get; init; }

    /// <summary>The clock as the log keeps it.</summary>
    public StirTimes Times => new(StirBegan, StirEnded);

    public static BenchClock Of(StirTimes times) => new() { StirBegan = times.Began, StirEnded = times.Ended };

    public bool IsStirring => StirBegan is not null && StirEnded is null;

    /// <summary>How long was stirred.</summary>
    public TimeSpan? Stirred => StirEnded - StirBegan;

    /// <summary>How long it has stood; null while it does not.</summary>
    public TimeSpan? Standing(DateTimeOffset now) => Times.Standing(now);

    /// <summary>Whether it was started at a time that is yet to come: the computer's clock was set back since.</summary>
    public bool IsAhead(DateTimeOffset now) => (StirEnded ?? StirBegan) > now;

    /// <summary>The times after the stir key: stirring begins, or ends.</summary>
    public StirTimes Toggled(DateTimeOffset now) => IsStirring ? new(StirBegan, now) : new(now, null);

    /// <summary>The times where the pot is known to have been stirred, or to have stood, for so long.</summary>
    public StirTimes TimesFor(TimeSpan time, DateTimeOffset now) => IsStirring
        ? new(now - time, null)
        : new(now - time - (Stirred ?? TimeSpan.Zero), now - time);

    /// <summary>The clock in words.</summary>
    public string Words(DateTimeOffset now)
    {
        if (StirBegan is not { } began)
        {
            return Say("not stirred yet (F3 starts the clock)");
        }

        if (Standing(now) is not { } standing)
        {
            return Say($"stirring {Shown(now - began)} (F3 ends it)");
        }

        var stirred = Stirred!.Value.TotalSeconds;
        return Due is not { } at ? Say($"stirred {stirred:0} s · standing {Shown(standing)}")
            : standing < at ? Say($"stirred {stirred:0} s · standing {Shown(standing)} · read in {Shown(at - standing)}")
            : Say($"stirred {stirred:0} s · standing {Shown(standing)} · read now");
    }

    /// <summary>A time as a clock shows it: minutes and seconds, and hours where there are some.</summary>
    public static string Shown(TimeSpan span) => span.TotalHours < 1
        ? FormattableString.Invariant($"{span.Minutes:00}:{span.Seconds:00}")
        : FormattableString.Invariant($"{(int)span.TotalHours}:{span.Minutes:00}:{span.Seconds:00}");
}
