namespace Viscolog.Cli.Json;

/// <summary>One thickener of a batch.</summary>
internal sealed record BatchPartAnswer(string Thickener, double DosePct, double ThickenerG, double WaterG);
