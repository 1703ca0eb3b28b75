namespace Viscolog.Tests.Support;

/// <summary>A clock that always shows one time, in UTC.</summary>
internal sealed class StoppedClock(DateTimeOffset now) : TimeProvider
{
    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => now;
}
