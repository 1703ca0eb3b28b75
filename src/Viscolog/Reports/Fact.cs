namespace Viscolog.Reports;

/// <summary>A name and what belongs to it.</summary>
/// <param name="Name">The name.</param>
/// <param name="Text">What belongs to it; null where somebody is to write it by hand.</param>
internal sealed record Fact(string Name, string? Text)
{
    /// <summary>Room to write.</summary>
    public static Fact Blank(string name) => new(name, null);
}
