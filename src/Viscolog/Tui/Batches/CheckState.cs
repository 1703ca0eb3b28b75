using System.Collections.Immutable;
using Viscolog.Core.Checking;
using Viscolog.Core.Pots;
using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Batches;

/// <summary>The check of a run: against which specification, and what came of it.</summary>
/// <param name="Run">The run.</param>
/// <param name="Specifications">What it may be checked against; those that it belongs to first.</param>
/// <param name="Today">The day.</param>
internal sealed record CheckState(LoggedRun Run, ImmutableArray<Specification> Specifications, DateOnly Today)
{
    /// <summary>Runs of the same base that were done before.</summary>
    public ImmutableArray<Run> Earlier { get; init; } = [];

    public int Chosen { get; init; }

    /// <summary>What came of the last question; null while it is worked on or where there is nothing to check against.</summary>
    public CheckOutcome? Outcome { get; init; }

    /// <summary>Lines of the findings that are passed over.</summary>
    public Scrolling Passed { get; init; }

    /// <summary>What became of what was written.</summary>
    public string Said { get; init; } = "";

    /// <summary>A fault of ours in the background.</summary>
    public string? Fault { get; init; }

    public Specification? Current => Specifications.IsEmpty ? null : Specifications[Math.Clamp(Chosen, 0, Specifications.Length - 1)];

    /// <summary>The state at first: the run's product comes first, then products that its name fits, its own target, the others.</summary>
    public static CheckState Of(LoggedRun run, BenchKnowledge bench, DateOnly today)
    {
        var own = run.File.Run;
        var kept = bench.Materials.OfType<Material.OfSpecification>().Where(s => !s.IsRetired).Select(s => s.Specification)
            .OrderBy(s => s.Name, StringComparer.Ordinal).ToList();
        var fitting = kept.Where(s => ProductTrend.IsOf(own.Product, own.Name, s.Name)).ToList();
        Specification[] target = own.Target is { } stated
            ? [new(Say("target of the run")) { Body = stated, ReferenceTemperature = own.ReferenceTemperature }]
            : [];
        return new(run, [.. fitting, .. target, .. kept.Except(fitting)], today);
    }
}
