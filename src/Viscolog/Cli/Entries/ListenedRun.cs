using Viscolog.Core.Advising;
using Viscolog.Feeds;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Wording;

namespace Viscolog.Cli.Entries;

/// <summary>A run that takes the readings of instruments: those that are kept of a stream, each looked at as a typed one is.</summary>
/// <param name="log">The log.</param>
/// <param name="run">The run.</param>
/// <param name="series">Which readings are kept.</param>
internal sealed class ListenedRun(BenchLog log, LoggedRun run, Series series)
{
    /// <summary>A temperature or pH that another instrument showed goes with a reading that comes so soon after it.</summary>
    private static readonly TimeSpan GoesWith = TimeSpan.FromMinutes(2);

    private readonly Dictionary<Column, (double Value, DateTimeOffset At)> _beside = [];
    private Series _series = series;
    private LoggedRun _run = run;
    private Study? _study = StudyOf(run);

    /// <summary>Why nothing more can be logged; null while it can.</summary>
    public string? Trouble { get; private set; }

    /// <summary>What became of a line: its row in the log, or why it is not logged.</summary>
    public string Take(FeedEvent.Understood told)
    {
        if (!Columns.Values.Any(v => told.Line.Of(v.Column) is not null))
        {
            foreach (var (column, value) in told.Line.Values)
            {
                _beside[column] = (value, told.At);
            }

            return told.Line.Of(Columns.AddedGrams) is null
                ? "kept for the next reading"
                : "not logged: what was poured is said at the bench, not by a balance alone";
        }

        var stood = _run.Clock.Standing(told.At);
        (_series, var keeps) = _series.With(told.At, told.Line.IsStable, stood);
        return keeps ? Log(told, stood) : "passed over";
    }

    private string Log(FeedEvent.Understood told, TimeSpan? stood)
    {
        string[] beside =
        [
            .. _beside.Where(b => b.Key != Columns.AddedGrams && told.At - b.Value.At < GoesWith && told.Line.Of(b.Key) is null)
                .Select(b => $"{b.Key.Name}={Tables.FileNumbers.Show(b.Value.Value)}"),
        ];
        var (row, trouble) = RowWords.Read(
            _run.File.Run, told.Line.Words.Where(w => !w.StartsWith("added_g=", StringComparison.Ordinal)).Concat(beside));
        if (row is null)
        {
            return $"not logged: {trouble}";
        }

        row = row with
        {
            Time = told.At,
            Reading = row.Reading! with { Wait = stood is { } w ? TimeSpan.FromSeconds(Math.Round(w.TotalSeconds)) : null },
        };
        if (_study is { } study && Surprise.Of(study, row.Reading) is { } surprise)
        {
            return $"not logged: {ReasonWords.Of(surprise)}; enter it by hand if it is right";
        }

        if (RowAppender.Fault(_run.File.Run, _run.File.Contents().Append(row)) is { } fault)
        {
            return $"not logged: {fault}";
        }

        var outcome = log.Add(_run.Number, row);
        if (outcome is not WriteOutcome.Saved)
        {
            Trouble = outcome.Trouble;
            return $"not logged: {outcome.Trouble}";
        }

        _run = log.Run(_run.Number)!;
        _study = StudyOf(_run);
        return FormattableString.Invariant($"row {_run.Rows.Length}");
    }

    private static Study? StudyOf(LoggedRun run) => (Study.Of(new(run.File.Run)) as StudyOutcome.Made)?.Study;
}
