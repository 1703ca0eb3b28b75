using System.Collections.Immutable;
using Viscolog.Core.Checking;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Store.Copy;
using Viscolog.Wording;

namespace Viscolog.Store;

/// <summary>What a log knows besides its runs.</summary>
/// <param name="Materials">Bases, thickeners, methods and specifications.</param>
/// <param name="Oils">Readings of certified oils that count.</param>
internal sealed record BenchKnowledge(ImmutableArray<Material> Materials, ImmutableArray<OilReading> Oils)
{
    /// <summary>Nothing.</summary>
    public static BenchKnowledge None { get; } = new([], []);

    public static BenchKnowledge Of(BenchLog log)
        => new([.. log.Materials().Select(m => m.Material)], [.. log.Oils().Where(o => o.Row.Void is null).Select(o => o.Row.Reading)]);

    private IEnumerable<Specification> Specifications => Materials.OfType<Material.OfSpecification>().Select(s => s.Specification);

    /// <summary>The specification of that name; capitals make no difference. Null where there is none.</summary>
    public Specification? Specification(string name)
        => Specifications.FirstOrDefault(s => s.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase));

    /// <summary>What to say where there is no specification of a name, or one that asks for no body.</summary>
    public string UnknownSpecification(string name)
    {
        string[] known = [.. Specifications.Where(s => s.Body is not null).Select(s => $"'{s.Name}'").Order(StringComparer.Ordinal)];
        var what = known.Length == 0 ? "'viscolog import FILE' brings a materials file in" : $"it has {string.Join(", ", known)}";
        return $"the log has no specification '{name}' that asks for a body; {what}";
    }

    /// <summary>The batches of a product, of all benches, in the order of time.</summary>
    public static ProductTrend Trend(BenchLog log, Specification specification, DateOnly today)
        => ProductTrend.Of(specification, RunsOf(log, specification), today);

    /// <summary>
    /// The runs of a product, each with its name on a chart: this bench's by number; where others share theirs, all in the order of time.
    /// </summary>
    public static ImmutableArray<TrendRun> RunsOf(BenchLog log, Specification specification)
    {
        var oils = Of(log).Oils;
        var own = Batches(log, specification)
            .Select(r => new TrendRun(Name(r), r.File.Run, oils));
        var others = log.SharedRuns(there => Batches(there, specification));
        return others.IsEmpty ? [.. own]
            : [.. others.Select(r => new TrendRun($"{r.Bench.Name}: {Name(r.Run)}", r.File.Run, r.Oils))
                .Concat(own).OrderBy(r => r.Run.Entries.Max(e => e.Time) ?? DateTimeOffset.MinValue)];
    }

    private static string Name(LoggedRun run) => run.File.Run.Name ?? FormattableString.Invariant($"run {run.Number}");

    private static IEnumerable<LoggedRun> Batches(BenchLog log, Specification specification)
        => log.Runs().Where(r => ProductTrend.IsOf(r.Header.Product, r.Header.Name, specification.Name)).OrderBy(r => r.Number)
            .Select(r => log.Run(r.Number)!);

    /// <summary>The check of a run.</summary>
    public CheckRequest Request(Run run, Specification specification, ImmutableArray<Run> earlier, DateOnly today)
        => new(run, specification, today) { History = earlier, Oils = Oils, Repeatability = RepeatabilityOf(run.MethodInForce) };

    /// <summary>How each method reads certified oils, by method and speed.</summary>
    public ImmutableArray<MethodDrift> Drifts()
        => [.. Oils.Select(o => o.Condition).Distinct().OrderBy(MethodWords.Of, StringComparer.Ordinal)
            .Select(c => MethodDrift.Of(Oils, c, RepeatabilityOf(c.Method) ?? c.Method.Repeatability)!)];

    /// <summary>The repeatability that the bench keeps for a method; null where it keeps none, or several.</summary>
    private Percentage? RepeatabilityOf(Method method)
        => Materials.OfType<Material.OfMethod>()
            .Where(m => !m.IsRetired && m.Method.Method == method && m.Method.Repeatability is not null)
            .Select(m => m.Method.Repeatability).ToArray() is [var only] ? only : null;
}
