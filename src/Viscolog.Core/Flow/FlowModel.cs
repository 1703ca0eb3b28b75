using System.Collections.Immutable;

namespace Viscolog.Core.Flow;

/// <summary>
/// A law of stress over shear rate. Sources (from memory): Ostwald 1925 and de Waele 1923 (power law), Bingham 1916, Herschel and Bulkley 1926, Casson 1959,
/// Cross, J. Colloid Sci. 20 (1965) 417, Carreau, Trans. Soc. Rheol. 16 (1972) 99.
/// </summary>
public abstract class FlowModel
{
    private protected FlowModel(string name, string law, params ImmutableArray<FlowQuantity> quantities) => (Name, Law, Quantities) = (name, law, quantities);

    /// <summary>Its name in answers.</summary>
    public string Name { get; }

    /// <summary>The law as a formula; stress τ, rate γ, viscosity η.</summary>
    public string Law { get; }

    /// <summary>Every law, the simplest first.</summary>
    public static IReadOnlyList<FlowModel> All { get; } =
    [
        new NewtonModel(), new PowerLawModel(), new BinghamModel(), new HerschelBulkleyModel(), new CassonModel(), new CrossModel(), new CarreauModel(),
    ];

    internal ImmutableArray<FlowQuantity> Quantities { get; }

    /// <summary>The same law with its last plateau at 0, where the data do not show one; null where it has none.</summary>
    internal virtual FlowModel? Reduced => null;

    /// <summary>Stress in Pa.</summary>
    /// <param name="rate">In 1/s, above 0.</param>
    /// <param name="theta">The parameters, each on its scale.</param>
    internal abstract double Stress(double rate, ReadOnlySpan<double> theta);

    /// <summary>Places to start from; the best of them is taken.</summary>
    internal abstract IEnumerable<double[]> Starts(FlowOutline outline);
}
