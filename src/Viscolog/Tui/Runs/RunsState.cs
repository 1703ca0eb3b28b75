using System.Collections.Immutable;
using Viscolog.Store.Copy;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Runs;

/// <summary>The list of runs: all of them, what is shown, which is chosen, which are marked for comparing.</summary>
/// <param name="All">Every run, the latest first.</param>
internal sealed record RunsState(ImmutableArray<RunSummary> All)
{
    public string Filter { get; init; } = "";

    public int Chosen { get; init; }

    public ImmutableSortedSet<int> Marked { get; init; } = [];

    /// <summary>Whether these are the invented runs of the practice log.</summary>
    public bool IsPractice { get; init; }

    public string Said { get; init; } = "";

    /// <summary>The runs whose name, base, lot, thickener or number holds the filter's text.</summary>
    public ImmutableArray<RunSummary> Shown => [.. All.Where(Takes)];

    public RunSummary? Current => Shown is { Length: > 0 } shown ? shown[Math.Clamp(Chosen, 0, shown.Length - 1)] : null;

    /// <summary>The marked runs, or else the chosen one.</summary>
    public ImmutableSortedSet<int> Meant => Marked.Count > 0 ? Marked : Current is { } run ? [run.Number] : [];

    public static RunsState Of(TuiContext context)
        => new([.. context.Log.Runs().OrderByDescending(r => r.Number)]) { IsPractice = context.IsPractice };

    public RunsState Move(int by) => this with { Chosen = Math.Clamp(Chosen + by, 0, Math.Max(0, Shown.Length - 1)) };

    public RunsState Search(string text) => this with { Filter = text, Chosen = 0 };

    public RunsState Mark()
        => Current is { } run
            ? this with { Marked = Marked.Contains(run.Number) ? Marked.Remove(run.Number) : Marked.Add(run.Number) }
            : this;

    private bool Takes(RunSummary run) => Filter.Trim() is not { Length: > 0 } text
        || run.Says(text) || FormattableString.Invariant($"{run.Number}").Contains(text, StringComparison.Ordinal);
}
