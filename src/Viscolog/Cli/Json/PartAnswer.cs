namespace Viscolog.Cli.Json;

/// <summary>One part of an uncertainty.</summary>
internal sealed record PartAnswer(string Part, double Pct, bool ShrinksWithReadings, string Words);
