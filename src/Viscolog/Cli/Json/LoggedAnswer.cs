namespace Viscolog.Cli.Json;

/// <summary>What was logged, as <c>viscolog.logged/1</c>.</summary>
/// <param name="Run">The run's number in the log.</param>
/// <param name="Id">Its UUID.</param>
/// <param name="Row">The row's number in the run; null where it is the run itself.</param>
internal sealed record LoggedAnswer(int Run, Guid? Id, int? Row) : Answer("viscolog.logged/1");

/// <summary>Names that a file or an option may say, as <c>viscolog.names/1</c>.</summary>
/// <param name="Kind">What they are names of.</param>
/// <param name="Names">Each with what it is.</param>
internal sealed record NamesAnswer(string Kind, IReadOnlyList<NamedThing> Names) : Answer("viscolog.names/1");

/// <summary>A name and what it stands for.</summary>
/// <param name="Name">The name, as files and options have it.</param>
/// <param name="Words">What it is.</param>
/// <param name="Unit">The unit of what is read; null where nothing is.</param>
/// <param name="RepeatabilityPct">The usual repeatability in %; null where there is none.</param>
internal sealed record NamedThing(string Name, string? Words, string? Unit = null, double? RepeatabilityPct = null);

/// <summary>What is set, as <c>viscolog.config/1</c>.</summary>
/// <param name="Path">The file.</param>
/// <param name="Settings">Each setting.</param>
internal sealed record ConfigAnswer(string Path, IReadOnlyList<ConfigAnswer.Setting> Settings) : Answer("viscolog.config/1")
{
    /// <summary>A setting.</summary>
    /// <param name="Key">Its key.</param>
    /// <param name="Value">Its value; null where none is set.</param>
    /// <param name="From">Where it comes from: the file, a variable of the environment, or the default.</param>
    internal sealed record Setting(string Key, string? Value, string From);
}
