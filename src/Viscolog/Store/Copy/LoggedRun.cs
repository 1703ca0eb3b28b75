using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.OilFiles;
using Viscolog.RunFiles;

namespace Viscolog.Store.Copy;

/// <summary>A run as the log holds it.</summary>
/// <param name="Number">Its number in this log.</param>
/// <param name="File">The run as a file, with its UUID.</param>
/// <param name="Rows">The numbers of the file's rows.</param>
internal sealed record LoggedRun(int Number, RunFile File, ImmutableArray<int> Rows)
{
    /// <summary>The headers that it had, the earliest first, the one in force last; each as one text.</summary>
    public ImmutableArray<string> Headers { get; init; } = [];

    /// <summary>Why rows were void that count again, by the row's number.</summary>
    public ImmutableDictionary<int, ImmutableArray<string>> Lifted { get; init; } = ImmutableDictionary<int, ImmutableArray<string>>.Empty;

    /// <summary>The clock of the last step.</summary>
    public StirTimes Clock { get; init; } = StirTimes.None;

    /// <summary>When the last thing happened to it or was logged.</summary>
    public DateTimeOffset Last { get; init; }

    /// <summary>The log that the run was handed to; null where it is this one's.</summary>
    public Guid? HandedTo { get; init; }
}

/// <summary>When a step was stirred.</summary>
/// <param name="Began">When stirring began; null where it has not.</param>
/// <param name="Ended">When it ended and standing began; null while the pot is being stirred, and before.</param>
internal sealed record StirTimes(DateTimeOffset? Began, DateTimeOffset? Ended)
{
    public static StirTimes None { get; } = new(null, null);

    /// <summary>How long the pot has stood; null while it does not.</summary>
    public TimeSpan? Standing(DateTimeOffset now) => Ended is { } ended ? now - ended : null;
}

/// <summary>A run as the log holds it, whose rows are not all in memory.</summary>
/// <param name="Number">Its number in this log.</param>
/// <param name="Header">The run as a file without rows, with its UUID.</param>
/// <param name="Count">How many rows it has.</param>
/// <param name="Rows">The rows in order, to be gone through as often as needed; it throws where some are missing.</param>
internal sealed record StreamedRun(int Number, RunFile Header, int Count, IEnumerable<LoggedRow> Rows)
{
    /// <summary>The headers that it had, the earliest first, the one in force last; each as one text.</summary>
    public ImmutableArray<string> Headers { get; init; } = [];

    /// <summary>Its UUID.</summary>
    public Guid Id => Header.Id!.Value;

    /// <summary>The log that the run was handed to; null where it is this one's.</summary>
    public Guid? HandedTo { get; init; }
}

/// <summary>A row of a logged run.</summary>
/// <param name="Number">Its number in the run.</param>
/// <param name="Row">What it says now.</param>
/// <param name="Lifted">Why it was void before that was lifted, the earliest first; null where nothing was.</param>
internal sealed record LoggedRow(int Number, FileRow Row, string[]? Lifted)
{
    /// <summary>Whether it was void for a reason that was lifted since: then what says so is older than the log.</summary>
    public bool WasLifted(string reason) => Lifted?.Contains(reason, StringComparer.Ordinal) == true;
}

/// <summary>What a list of runs says of one.</summary>
/// <param name="Number">Its number in this log.</param>
/// <param name="Id">Its UUID.</param>
/// <param name="Header">What its header says; no entries.</param>
/// <param name="Entries">Its rows, void ones included.</param>
/// <param name="Voided">Rows that are void.</param>
/// <param name="Readings">Rows with a reading that count.</param>
/// <param name="Last">When the last thing happened to it or was logged.</param>
internal sealed record RunSummary(int Number, Guid Id, Run Header, int Entries, int Voided, int Readings, DateTimeOffset Last)
{
    /// <summary>Whether it was put away from the list.</summary>
    public bool IsArchived { get; init; }

    /// <summary>The log that the run was handed to; null where it is this one's.</summary>
    public Guid? HandedTo { get; init; }

    /// <summary>Its thickeners.</summary>
    public IReadOnlyList<string> Thickeners => [.. Header.Thickeners.Select(t => t.Name)];

    /// <summary>Whether its name, base, lot or a thickener holds a text; capitals make no difference.</summary>
    public bool Says(string text)
        => new[] { Header.Name, Header.Base.Name, Header.Lot }.Concat(Thickeners)
            .Any(t => t?.Contains(text, StringComparison.OrdinalIgnoreCase) == true);
}

/// <summary>A reading of a certified oil that the log has.</summary>
/// <param name="Number">Its number in this log, from 1.</param>
/// <param name="Row">What it says.</param>
internal sealed record LoggedOil(int Number, OilRow Row);
