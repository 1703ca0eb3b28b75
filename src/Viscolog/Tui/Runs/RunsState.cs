using System.Collections.Immutable;
using System.Globalization;
using Viscolog.Store.Copy;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Runs;

/// <summary>The list of runs: all of them, what is shown, which is chosen, which are marked for comparing.</summary>
/// <param name="All">Every run, the latest first.</param>
internal sealed record RunsState(ImmutableArray<RunSummary> All)
{
    private readonly LastFound _found = new();

    public string Filter { get; init; } = "";

    public int Chosen { get; init; }

    public ImmutableSortedSet<int> Marked { get; init; } = [];

    /// <summary>Whether these are the invented runs of the practice log.</summary>
    public bool IsPractice { get; init; }

    public string Said { get; init; } = "";

    public RunOrder Order { get; init; }

    /// <summary>Whether runs that were put away are shown as well.</summary>
    public bool ShowsArchived { get; init; }

    /// <summary>The runs that hold every word of the filter in one column or another.</summary>
    public ImmutableArray<RunSummary> Shown => _found.Of((All, Filter, Order, ShowsArchived), () => [.. Sorted(All.Where(Takes))]);

    public int Place => Math.Clamp(Chosen, 0, Math.Max(0, Shown.Length - 1));

    public RunSummary? Current => Shown is { Length: > 0 } shown ? shown[Math.Clamp(Chosen, 0, shown.Length - 1)] : null;

    /// <summary>The marked runs, or else the chosen one.</summary>
    public ImmutableSortedSet<int> Meant => Marked.Count > 0 ? Marked : Current is { } run ? [run.Number] : [];

    public static RunsState Of(TuiContext context)
        => new([.. context.Log.Runs().OrderByDescending(r => r.Number)]) { IsPractice = context.IsPractice };

    /// <summary>Chooses another run; very large steps lead to the first and the last.</summary>
    public RunsState Move(int by) => this with { Chosen = Scrolling.Moved(Place, by, Shown.Length) };

    /// <summary>Another order, the same run chosen.</summary>
    public RunsState Sort()
    {
        var sorted = this with { Order = (RunOrder)(((int)Order + 1) % Enum.GetValues<RunOrder>().Length) };
        return Current is { } run ? sorted with { Chosen = sorted.Shown.IndexOf(run) } : sorted;
    }

    public RunsState Search(string text) => this with { Filter = text, Chosen = 0 };

    public RunsState Mark()
        => Current is { } run
            ? this with { Marked = Marked.Contains(run.Number) ? Marked.Remove(run.Number) : Marked.Add(run.Number) }
            : this;

    /// <summary>The cells of the list.</summary>
    public static string[] Cells(RunSummary run) =>
    [
        run.Number.ToString(CultureInfo.InvariantCulture),
        run.Header.Name ?? "",
        run.Header.Base.Name ?? "",
        string.Join(", ", run.Thickeners),
        run.Entries.ToString(CultureInfo.InvariantCulture),
        run.Last.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture),
    ];

    private IEnumerable<RunSummary> Sorted(IEnumerable<RunSummary> runs) => Order switch
    {
        RunOrder.Name => runs.OrderBy(r => r.Header.Name ?? "", StringComparer.CurrentCultureIgnoreCase).ThenBy(r => r.Number),
        RunOrder.Base
            => runs.OrderBy(r => r.Header.Base.Name ?? "", StringComparer.CurrentCultureIgnoreCase).ThenByDescending(r => r.Number),
        RunOrder.Last => runs.OrderByDescending(r => r.Last),
        _ => runs,
    };

    private bool Takes(RunSummary run)
    {
        if (run.IsArchived && !ShowsArchived)
        {
            return false;
        }

        if (Filter.Length == 0)
        {
            return true;
        }

        string?[] columns = [.. Cells(run), run.Header.Lot, run.Header.Product, run.Header.Operator];
        return Filter.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .All(word => Array.Exists(columns, c => c?.Contains(word, StringComparison.OrdinalIgnoreCase) == true));
    }
}

/// <summary>
/// What was found last, kept from state to state while nothing that it hangs on changes: a key would search a long list several times.
/// It says nothing that the state does not say, so that all are equal.
/// </summary>
internal sealed class LastFound : IEquatable<LastFound>
{
    private (ImmutableArray<RunSummary> All, string Filter, RunOrder Order, bool ShowsArchived) _asked;
    private ImmutableArray<RunSummary> _found;

    public ImmutableArray<RunSummary> Of(
        (ImmutableArray<RunSummary> All, string Filter, RunOrder Order, bool ShowsArchived) asked,
        Func<ImmutableArray<RunSummary>> find)
    {
        if (_found.IsDefault || _asked != asked)
        {
            (_found, _asked) = (find(), asked);
        }

        return _found;
    }

    public bool Equals(LastFound? other) => other is not null;

    public override bool Equals(object? obj) => obj is LastFound;

    public override int GetHashCode() => 0;
}

/// <summary>The order of the list.</summary>
internal enum RunOrder
{
    /// <summary>The run begun last comes first.</summary>
    Number,
    Name,
    Base,

    /// <summary>What was worked on last comes first.</summary>
    Last,
}
