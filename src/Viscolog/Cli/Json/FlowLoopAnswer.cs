namespace Viscolog.Cli.Json;

/// <summary>The loop between rates going up and coming down.</summary>
internal sealed record FlowLoopAnswer(double AreaPaPerS, double PartPct);
