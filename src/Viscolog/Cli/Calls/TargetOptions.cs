using System.CommandLine;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;

namespace Viscolog.Cli.Calls;

/// <summary>A target given on the command line in place of the run's own.</summary>
internal sealed class TargetOptions
{
    public Option<double?> Target { get; } = NumberOption.Create(
        "--target", "MPAS", "Wanted body in mPa·s, in place of the run's own.", 1e-3, 1e12);

    public Option<double?> Tolerance { get; } = NumberOption.Create(
        "--tolerance", "PCT", "Allowed either side in %; default: the run's own, else 15.", 0.1, 100);

    public Option[] All => [Target, Tolerance];

    /// <summary>Whether the call gives any of them.</summary>
    public bool AreGiven(Invocation call) => call.Value(Target) is not null || call.Value(Tolerance) is not null;

    /// <summary>The band in force; null where there is none.</summary>
    public ViscosityBand? Band(RunFile file, Invocation call) => InForce(file, call)?.Band;

    /// <summary>The target in force; null where there is none.</summary>
    public Target? InForce(RunFile file, Invocation call)
    {
        var run = file.Run;
        Percentage? tolerance = call.Value(Tolerance) is { } percent ? Percentage.FromPercent(percent) : null;
        if (call.Value(Target) is { } wanted)
        {
            return new Target.Value(
                Viscosity.FromMilliPascalSeconds(wanted),
                tolerance ?? (run.Target as Target.Value)?.Tolerance ?? file.UnusedTolerance);
        }

        return tolerance is not null && run.Target is { } own ? new Target.Value(own.Band.Aim, tolerance) : run.Target;
    }
}
