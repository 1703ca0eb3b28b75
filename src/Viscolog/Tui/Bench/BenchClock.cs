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

    public bool IsStirring => StirBegan is not null && StirEnded is null;

    /// <summary>How long was stirred.</summary>
    public TimeSpan? Stirred => StirEnded - StirBegan;

    /// <summary>How long it has stood; null while it does not.</summary>
    public TimeSpan? Standing(DateTimeOffset now) => StirEnded is { } ended ? now - ended : null;

    /// <summary>Starts stirring, or ends it.</summary>
    public BenchClock Toggle(DateTimeOffset now) => IsStirring
        ? this with { StirEnded = now, HasRung = false }
        : this with { StirBegan = now, StirEnded = null, HasRung = false };

    /// <summary>The clock in words.</summary>
    public string Words(DateTimeOffset now)
    {
        if (StirBegan is not { } began)
        {
            return "not stirred yet (F3 starts the clock)";
        }

        if (Standing(now) is not { } standing)
        {
            return $"stirring {Shown(now - began)} (F3 ends it)";
        }

        var due = Due is not { } at ? "" : standing < at ? $" · read in {Shown(at - standing)}" : " · read now";
        return $"stirred {Stirred!.Value.TotalSeconds:0} s · standing {Shown(standing)}{due}";
    }

    private static string Shown(TimeSpan span) => FormattableString.Invariant($"{(int)span.TotalMinutes:00}:{span.Seconds:00}");
}
