using System.CommandLine;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;
using Viscolog.Typing;

namespace Viscolog.Cli.Calls;

/// <summary>A target given on the command line in place of the run's own.</summary>
internal sealed class TargetOptions
{
    public TargetOptions() => Target.Validators.Add(result =>
    {
        if (result.Tokens is [var token, ..] && TypedTarget.Wrong(token.Value) is { } wrong)
        {
            result.AddError($"--target: {wrong}");
        }
    });

    public Option<string?> Target { get; } = TextOption.Create(
        "--target",
        "BODY",
        "Wanted body in mPa·s, in place of the run's own; or with a unit, such as \"12 Pa·s\", or \"92 KU\" and \"38 s\" "
            + "where the run's method shows those.");

    public Option<double?> Tolerance { get; } = NumberOption.Create(
        "--tolerance", "PCT", "Allowed either side in %; default: the run's own, else 15.", new("%", 0.1, 100));

    public Option[] All => [Target, Tolerance];

    /// <summary>Whether the call gives any of them.</summary>
    public bool AreGiven(Invocation call) => call.Value(Target) is not null || call.Value(Tolerance) is not null;

    /// <summary>Why the call's target can't be the run's; null where it can.</summary>
    public string? Trouble(Run run, Invocation call)
    {
        string? error = null;
        return call.Value(Target) is { } typed && TypedTarget.Read(typed, run, out error) is null ? $"--target: {error}" : null;
    }

    /// <summary>The band in force; null where there is none.</summary>
    public ViscosityBand? Band(RunFile file, Invocation call) => InForce(file, call)?.Band;

    /// <summary>The target in force; null where there is none.</summary>
    public Target? InForce(RunFile file, Invocation call)
    {
        var run = file.Run;
        Percentage? tolerance = call.Value(Tolerance) is { } percent ? Percentage.FromPercent(percent) : null;
        if (call.Value(Target) is { } typed && TypedTarget.Read(typed, run, out _) is { } wanted)
        {
            return new Target.Value(
                Viscosity.FromMilliPascalSeconds(wanted),
                tolerance ?? (run.Target as Target.Value)?.Tolerance ?? file.UnusedTolerance);
        }

        return tolerance is not null && run.Target is { } own ? new Target.Value(own.Band.Aim, tolerance) : run.Target;
    }
}
