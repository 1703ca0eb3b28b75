namespace Viscolog.Cli.Json;

/// <summary>The body expected at a dose.</summary>
internal sealed record DosedBodyAnswer(double DosePct, double MedianMpas, double LowMpas, double HighMpas);
