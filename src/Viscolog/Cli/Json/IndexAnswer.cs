using Viscolog.Core.Checking;

namespace Viscolog.Cli.Json;

/// <summary>The interval of a capability index.</summary>
internal sealed record IndexAnswer(double Low, double High, double LevelPct)
{
    public static IndexAnswer? Of(Capability? index) => index is null ? null : new(Rounded.Four(index.Low), Rounded.Four(index.High), Capability.Level.Percent);
}
