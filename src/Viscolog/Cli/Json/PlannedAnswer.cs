namespace Viscolog.Cli.Json;

/// <summary>What is still to come of a thickener.</summary>
internal sealed record PlannedAnswer(string Thickener, double AboutPct, int Additions);
