using System.CommandLine;
using Viscolog.Core.Checking;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Store;
using Viscolog.Tables;

namespace Viscolog.Cli.Calls;

/// <summary>What a batch is checked against, as a call names it.</summary>
internal sealed class SpecificationOptions
{
    private readonly Option<double?> _low = NumberOption.Create(
        "--low",
        "MPAS",
        "The lowest body accepted, in mPa·s.",
        NumberRange.Viscosity);
    private readonly Option<double?> _high = NumberOption.Create(
        "--high",
        "MPAS",
        "The highest body accepted, in mPa·s.",
        NumberRange.Viscosity);
    private readonly Option<string?> _spec = TextOption.Create("--spec", "NAME", "A specification of the log. Without it and without "
        + "--low and --high: that of the run's product, else the run's own target.");

    public Option[] All => [_low, _high, _spec];

    /// <summary>Whether the call names anything to check against.</summary>
    public bool AreGiven(Invocation call) => call.Value(_low) is not null || call.Value(_high) is not null || call.Value(_spec) is not null;

    /// <summary>What is wrong with the options together; null where nothing is.</summary>
    public string? Conflict(Invocation call)
    {
        var (least, most) = (call.Value(_low), call.Value(_high));
        return least is null != most is null ? "give both --low and --high"
            : least >= most ? "--low must be below --high"
            : least is not null && call.Value(_spec) is not null ? "give --spec, or --low and --high, not both"
            : null;
    }

    /// <summary>What to check against; null after it was said why there is nothing, the exit code then says it too.</summary>
    /// <param name="named">The run; what its bench knows is read where only a log can tell.</param>
    /// <param name="call">The call.</param>
    /// <param name="code">How the call ends where there is nothing.</param>
    public Specification? Find(ref NamedRun named, Invocation call, out ExitCode code)
    {
        code = ExitCode.InputRefused;
        if (call.Value(_spec) is not null && ReferenceEquals(named.Bench, BenchKnowledge.None))
        {
            using var log = call.OpenLog(LogUse.Read);
            if (log is null)
            {
                code = ExitCode.LogUnusable;
                return null;
            }

            named = named with { Bench = BenchKnowledge.Of(log) };
        }

        var found = Specified(named, call);
        if (found is null)
        {
            call.Refuse(call.Value(_spec) is { } asked
                ? named.Bench.UnknownSpecification(asked)
                : $"{named.Name}: nothing to check against; give --low and --high, --spec NAME, or a target in the run");
        }

        return found;
    }

    private Specification? Specified(NamedRun named, Invocation call)
    {
        var own = named.File.Run;
        if (call.Value(_low) is { } least && call.Value(_high) is { } most)
        {
            var ends = new Target.Ends(Viscosity.FromMilliPascalSeconds(least), Viscosity.FromMilliPascalSeconds(most));
            return new("limits stated for this batch") { Body = ends, ReferenceTemperature = own.ReferenceTemperature };
        }

        if (call.Value(_spec) is { } asked)
        {
            return named.Bench.Specification(asked);
        }

        return (own.Product is { } product ? named.Bench.Specification(product) : null)
            ?? (own.Target is { } target
                ? new Specification("target of the run") { Body = target, ReferenceTemperature = own.ReferenceTemperature }
                : null);
    }
}
