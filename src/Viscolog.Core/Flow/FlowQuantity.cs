using System.Collections.Immutable;

namespace Viscolog.Core.Flow;

/// <summary>A parameter that a flow model has.</summary>
/// <param name="Name">Its name in answers, with the unit in it.</param>
/// <param name="Words">Its name for a person.</param>
/// <param name="Unit">Its unit; "1" for a pure number.</param>
/// <param name="Scale">The scale on which it is fitted.</param>
internal sealed record FlowQuantity(string Name, string Words, string Unit, ParameterScale Scale)
{
    /// <summary>Whether a material may have none of it: the data may then not show it, and an upper limit is stated.</summary>
    public bool MayBeNone { get; init; }

    /// <summary>A yield stress, unless it is left out, and what else a law has.</summary>
    public static ImmutableArray<FlowQuantity> Yielding(bool isReduced, ParameterScale scale, params ImmutableArray<FlowQuantity> others)
        => isReduced ? others : others.Insert(0, new("yield_stress_pa", "yield stress", "Pa", scale) { MayBeNone = true });

    public static FlowQuantity Consistency { get; } = new("consistency_pa_sn", "consistency", "Pa·s^n", ParameterScale.Logarithm);

    public static FlowQuantity Index(ParameterScale scale) => new("flow_index", "flow index", "1", scale);

    /// <summary>The parameter's value where it was fitted as <paramref name="theta"/>.</summary>
    public double Value(double theta) => Scale switch
    {
        ParameterScale.Logarithm => Math.Exp(theta),
        ParameterScale.Root => theta * Math.Abs(theta),
        _ => theta,
    };

    /// <summary>Its derivative there.</summary>
    public double Slope(double theta) => Scale switch
    {
        ParameterScale.Logarithm => Math.Exp(theta),
        ParameterScale.Root => 2 * Math.Abs(theta),
        _ => 1,
    };
}
