using System.Collections.Immutable;
using Viscolog.Feeds;
using Viscolog.Sharing;
using Viscolog.Store;
using Viscolog.Store.Copy;

namespace Viscolog.Cli.Calls;

/// <summary>What a call finds around it.</summary>
/// <param name="Variable">A variable of the environment; null where it is not set.</param>
/// <param name="Clock">The time.</param>
internal sealed record Surroundings(Func<string, string?> Variable, TimeProvider Clock)
{
    /// <summary>Why no screens can be shown; null where they can.</summary>
    public Func<string?> Obstacle { get; init; } = () => "there are no screens here";

    /// <summary>Shows the screens of a log, one of its runs first where one is given, until they end; says how.</summary>
    public Func<BenchLog, LoggedRun?, Look, ScreenEnd> Screens { get; init; } = (_, _, _) => new(null, 0);

    /// <summary>Shows the practice screens on an open practice log until they end; says how.</summary>
    public Func<BenchLog, Look, ScreenEnd> PracticeScreens { get; init; } = (_, _) => new(null, 0);

    /// <summary>What the user's configuration file sets.</summary>
    public Lazy<Settings> Settings { get; init; } = new(() => Calls.Settings.Read(Variable, null));

    /// <summary>Whether there is a standard input to read.</summary>
    public bool HasInput { get; init; }

    /// <summary>The next line that somebody types; null where there is none.</summary>
    public Func<string?> NextLine { get; init; } = () => null;

    /// <summary>Asks for something that nobody may read over a shoulder; null where nobody is there to type it.</summary>
    public Func<string, string?> Secret { get; init; } = _ => null;

    /// <summary>Those of the process.</summary>
    public static Surroundings OfProcess { get; } = new(
        Environment.GetEnvironmentVariable, TimeProvider.System)
    {
        Settings = new(static () => Calls.Settings.Read(Environment.GetEnvironmentVariable, Calls.Settings.UsualPath())),
        HasInput = StandardStreams.HasInput,
        NextLine = static () => StandardStreams.HasInput ? Console.In.ReadLine() : null,
        Secret = StandardStreams.Secret,
    };
}

/// <summary>What a screen may use.</summary>
/// <param name="IsAscii">Only printable ASCII.</param>
/// <param name="HasColor">Colours.</param>
/// <param name="IsSixteenColors">No more than sixteen of them.</param>
internal sealed record Look(bool IsAscii, bool HasColor, bool IsSixteenColors)
{
    /// <summary>The ground that colours are made for: <c>dark</c>, <c>light</c>, or else the terminal's own.</summary>
    public string? Ground { get; init; }

    /// <summary>Whether the mouse is the screens'; otherwise it stays the terminal's, which then marks and copies text with it.</summary>
    public bool HasMouse { get; init; } = true;

    /// <summary>Instruments that the screens listen to.</summary>
    public ImmutableArray<Instrument> Instruments { get; init; } = [];

    /// <summary>What shares the log with other benches; null where it is not shared.</summary>
    public SharePost? Post { get; init; }

    /// <summary>Whether readings that have come to rest are logged by themselves.</summary>
    public bool TakesReadings { get; init; }
}

/// <summary>How screens ended.</summary>
/// <param name="Fault">A fault of ours; null where there was none.</param>
/// <param name="Code">The exit code that a signal asks for; 0 where none came.</param>
internal sealed record ScreenEnd(Exception? Fault, int Code);
