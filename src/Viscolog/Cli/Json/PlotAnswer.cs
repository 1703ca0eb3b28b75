namespace Viscolog.Cli.Json;

/// <summary>A written picture as <c>viscolog.plot/1</c>.</summary>
internal sealed record PlotAnswer(string File)
{
    public string Schema { get; } = "viscolog.plot/1";
}

/// <summary>A written document as <c>viscolog.paper/1</c>.</summary>
internal sealed record PaperAnswer(string File)
{
    public string Schema { get; } = "viscolog.paper/1";
}
