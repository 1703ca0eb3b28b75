using System.Collections.Immutable;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Copy;

namespace Viscolog.Tui.Bench;

/// <summary>
/// Something that is logged and can be taken back and said again; each of the three is a change of the log of its own, and nothing is
/// deleted. The set of cases is closed.
/// </summary>
/// <param name="What">What it is, in words.</param>
internal abstract record BenchChange(string What)
{
    /// <summary>Why a row is void that was taken back, as the log has it.</summary>
    public const string TakenBack = "taken back";

    /// <summary>Why a row is void, for people.</summary>
    public static string Why(string reason) => reason == TakenBack ? Say("taken back") : reason;

    /// <summary>
    /// What a run holds as changes that can be taken back: its rows, the one logged last above the others, and then its clock.
    /// </summary>
    public static ImmutableStack<BenchChange> Known(LoggedRun run)
    {
        var changes = Known(run.Rows, run.File);
        var stirring = run.Clock with { Ended = null };
        changes = run.Clock.Began is null ? changes : changes.Push(new Clock(Say("stirring"), StirTimes.None, stirring));
        return run.Clock.Ended is null ? changes : changes.Push(new Clock(Say("stirring ended"), stirring, run.Clock));
    }

    private static ImmutableStack<BenchChange> Known(ImmutableArray<int> rows, RunFile file)
        => [.. rows.Zip(file.Contents(), (n, r) => (Number: n, Row: r)).Where(r => r.Row.Void is null).OrderBy(r => r.Number)
            .Select(BenchChange (r) => Rows.Added(Say($"entry {r.Number}"), r.Row, r.Number))];

    /// <summary>Logs it.</summary>
    public abstract WriteOutcome Log(BenchLog log, int run, ChangeWay way);

    /// <summary>Rows are added, made void or count again.</summary>
    /// <param name="What">What it is, in words.</param>
    /// <param name="First">The edits when it is said.</param>
    /// <param name="Back">The edits that take it back.</param>
    /// <param name="Again">The edits that say it again.</param>
    internal sealed record Rows(string What, ImmutableArray<RunEdit> First, ImmutableArray<RunEdit> Back, ImmutableArray<RunEdit> Again)
        : BenchChange(What)
    {
        /// <summary>The step that begins with it; null where the pot's content stays as it is.</summary>
        public NewStep? Step { get; init; }

        /// <summary>A row at the end of the run.</summary>
        /// <param name="what">What it is, in words.</param>
        /// <param name="row">What it says.</param>
        /// <param name="number">The number that it gets.</param>
        public static Rows Added(string what, FileRow row, int number)
            => new(what, [new RunEdit.Add(row)], [new RunEdit.Void(number, TakenBack)], [new RunEdit.Lift(number)]);

        public override WriteOutcome Log(BenchLog log, int run, ChangeWay way)
        {
            var outcome = log.Edit(run, [.. way switch { ChangeWay.First => First, ChangeWay.Back => Back, _ => Again }]);
            // A row that is added starts another clock by itself; taken back, the clock before goes on.
            return outcome is not WriteOutcome.Saved || Step is not { } step || way == ChangeWay.First
                ? outcome
                : log.SetClock(run, way == ChangeWay.Back ? step.Before : StirTimes.None);
        }
    }

    /// <summary>The header is stated anew.</summary>
    internal sealed record Header(string What, RunFile Before, RunFile After) : BenchChange(What)
    {
        public override WriteOutcome Log(BenchLog log, int run, ChangeWay way) => log.Restate(run, way == ChangeWay.Back ? Before : After);
    }

    /// <summary>The clock is started, stopped or set.</summary>
    internal sealed record Clock(string What, StirTimes Before, StirTimes After) : BenchChange(What)
    {
        public override WriteOutcome Log(BenchLog log, int run, ChangeWay way) => log.SetClock(run, TimesOf(way));

        public StirTimes TimesOf(ChangeWay way) => way == ChangeWay.Back ? Before : After;
    }
}

/// <summary>A step of a run that begins as something goes into the pot.</summary>
/// <param name="Before">The clock of the step before it.</param>
/// <param name="Due">How long it is to stand before it is read.</param>
internal sealed record NewStep(StirTimes Before, TimeSpan Due);

/// <summary>Whether a change is said, taken back or said again.</summary>
internal enum ChangeWay
{
    First,
    Back,
    Again,
}

/// <summary>What was said, and what was taken back of it.</summary>
internal sealed record ChangeHistory(ImmutableStack<BenchChange> Said, ImmutableStack<BenchChange> TakenBack)
{
    public ChangeHistory After(BenchChange change, ChangeWay way) => way switch
    {
        ChangeWay.First => new(Said.Push(change), []),
        ChangeWay.Back => new(Said.Pop(), TakenBack.Push(change)),
        _ => new(Said.Push(change), TakenBack.Pop()),
    };
}
