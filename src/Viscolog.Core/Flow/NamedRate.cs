using Viscolog.Core.Quantities;

namespace Viscolog.Core.Flow;

/// <summary>A shear rate that a process is known for.</summary>
/// <param name="Name">The process; null for a rate that was asked for.</param>
/// <param name="Rate">The rate.</param>
public sealed record NamedRate(string? Name, ShearRate Rate)
{
    /// <summary>Middles of the ranges in Barnes, Hutton and Walters, An Introduction to Rheology, Elsevier 1989, table 2.1 (from memory).</summary>
    public static IReadOnlyList<NamedRate> Usual { get; } =
    [
        new("levelling", ShearRate.FromPerSecond(0.03)),
        new("draining", ShearRate.FromPerSecond(1)),
        new("dip coating", ShearRate.FromPerSecond(30)),
        new("mixing and stirring", ShearRate.FromPerSecond(100)),
        new("brushing and spraying", ShearRate.FromPerSecond(3000)),
    ];
}
