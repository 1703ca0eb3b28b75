namespace Viscolog.Cli.Json;

/// <summary>A dose limit.</summary>
internal sealed record LimitAnswer(double Pct, string Why);
