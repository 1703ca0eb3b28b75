namespace Viscolog.RunFiles;

/// <summary>A header key that the format knows.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Take">Takes a line with it into the header.</param>
/// <param name="Show">The values that a file writes for it; none where it is not stated.</param>
internal sealed record HeaderKey(string Name, Action<RunHeader, HeaderLine> Take, Func<RunFile, IEnumerable<string>> Show)
{
    /// <summary>A key that stands once at most.</summary>
    public static HeaderKey Once(string name, Action<RunHeader, HeaderLine> take, Func<RunFile, string?> show)
        => new(name, take, f => show(f) is { } value ? [value] : []);

    /// <summary>Whether it may stand more than once.</summary>
    public bool Repeats { get; init; }

    /// <summary>Whether it says something of the method.</summary>
    public bool IsOfMethod { get; init; }
}
