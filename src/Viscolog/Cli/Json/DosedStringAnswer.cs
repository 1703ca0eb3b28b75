namespace Viscolog.Cli.Json;

/// <summary>The string expected at a dose.</summary>
internal sealed record DosedStringAnswer(double DosePct, double MedianMm, double LowMm, double HighMm);
