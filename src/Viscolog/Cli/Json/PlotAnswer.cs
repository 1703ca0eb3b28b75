namespace Viscolog.Cli.Json;

/// <summary>A written picture as <c>viscolog.plot/1</c>.</summary>
internal sealed record PlotAnswer(string File)
{
    public string Schema { get; } = "viscolog.plot/1";
}
