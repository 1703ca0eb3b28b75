using System.Collections.Immutable;

namespace Viscolog.Core.Flow;

/// <summary>
/// A law of stress over shear rate. Sources (from memory): Ostwald 1925 and de Waele 1923 (power law), Bingham 1916, Herschel and Bulkley
/// 1926, Casson 1959,
/// Cross, J. Colloid Sci. 20 (1965) 417, Carreau, Trans. Soc. Rheol. 16 (1972) 99.
/// </summary>
public abstract class FlowModel
{
    private protected FlowModel(string name, string law, params ImmutableArray<FlowQuantity> quantities)
        => (Name, Law, Quantities) = (name, law, quantities);

    /// <summary>Its name in answers.</summary>
    public string Name { get; }

    /// <summary>The law as a formula; stress τ, rate γ, viscosity η.</summary>
    public string Law { get; }

    /// <summary>Every law, the simplest first.</summary>
    public static IReadOnlyList<FlowModel> All { get; } =
    [
        new NewtonModel(),
        new PowerLawModel(),
        new BinghamModel(),
        new HerschelBulkleyModel(),
        new CassonModel(),
        new CrossModel(),
        new CarreauModel(),
    ];

    internal ImmutableArray<FlowQuantity> Quantities { get; }

    /// <summary>
    /// The same law without what a material may have none of, a yield stress or a last plateau; null where it has neither.
    /// </summary>
    internal virtual FlowModel? Reduced => null;

    /// <summary>The place of that among <see cref="Quantities"/>.</summary>
    internal int NonePlace => Quantities.IndexOf(Quantities.First(q => q.MayBeNone));

    /// <summary>Whether it has plateaus; where it has no last one it is a law of its own.</summary>
    internal virtual bool HasPlateaus => false;

    /// <summary>Stress in Pa.</summary>
    /// <param name="rate">In 1/s, above 0.</param>
    /// <param name="theta">The parameters, each on its scale.</param>
    internal abstract double Stress(double rate, ReadOnlySpan<double> theta);

    /// <summary>Places to start from; the best of them is taken.</summary>
    internal abstract IEnumerable<double[]> Starts(FlowOutline outline);
}

/// <summary>τ = ηγ.</summary>
internal sealed class NewtonModel() : FlowModel(
    "newton", "τ = η·γ", new FlowQuantity("viscosity_pas", "viscosity", "Pa·s", ParameterScale.Logarithm))
{
    internal override double Stress(double rate, ReadOnlySpan<double> theta) => Math.Exp(theta[0]) * rate;

    internal override IEnumerable<double[]> Starts(FlowOutline outline)
        => [[(Math.Log(outline.LeastViscosity) + Math.Log(outline.MostViscosity)) / 2]];
}

/// <summary>τ = Kγⁿ; n may come out below 0, which no liquid at rest has (see <see cref="FlowCurve.Warnings"/>).</summary>
internal sealed class PowerLawModel() : FlowModel(
    "power-law", "τ = K·γ^n", FlowQuantity.Consistency, FlowQuantity.Index(ParameterScale.Plain))
{
    internal override double Stress(double rate, ReadOnlySpan<double> theta) => Math.Exp(theta[0] + (theta[1] * Math.Log(rate)));

    internal override IEnumerable<double[]> Starts(FlowOutline outline)
    {
        var (k, n) = outline.PowerLaw(0);
        return [[k, n]];
    }
}

/// <summary>τ = τ₀ + ηγ.</summary>
internal sealed class BinghamModel(bool isReduced = false) : FlowModel(
    "bingham", "τ = τ0 + η·γ", FlowQuantity.Yielding(isReduced, ParameterScale.Plain, new FlowQuantity(
        "plastic_viscosity_pas", "plastic viscosity", "Pa·s", ParameterScale.Logarithm)))
{
    private static readonly double[] YieldParts = [0.5, 0.9, 0.99];

    internal override FlowModel? Reduced => isReduced ? null : new BinghamModel(isReduced: true);

    internal override double Stress(double rate, ReadOnlySpan<double> theta)
        => isReduced ? Math.Exp(theta[0]) * rate : theta[0] + (Math.Exp(theta[1]) * rate);

    internal override IEnumerable<double[]> Starts(FlowOutline outline)
    {
        var plastic = Math.Log(outline.Stresses.Average() / outline.Rates.Average() / 2);
        return isReduced ? [[plastic]] : YieldParts.Select(part => new[] { part * outline.LeastStress, plastic });
    }
}

/// <summary>τ = τ₀ + Kγⁿ; a power law where there is no yield stress.</summary>
internal sealed class HerschelBulkleyModel(bool isReduced = false) : FlowModel(
    "herschel-bulkley", "τ = τ0 + K·γ^n", FlowQuantity.Yielding(
        isReduced, ParameterScale.Plain, FlowQuantity.Consistency, FlowQuantity.Index(ParameterScale.Logarithm)))
{
    private static readonly double[] YieldParts = [0, 0.3, 0.6, 0.8, 0.9, 0.97, 0.995];

    private const double LeastIndex = 0.05;

    internal override FlowModel? Reduced => isReduced ? null : new HerschelBulkleyModel(isReduced: true);

    internal override double Stress(double rate, ReadOnlySpan<double> theta)
        => (isReduced ? 0 : theta[0]) + Math.Exp(theta[^2] + (Math.Exp(theta[^1]) * Math.Log(rate)));

    internal override IEnumerable<double[]> Starts(FlowOutline outline) => YieldParts.Take(isReduced ? 1 : YieldParts.Length).Select(part =>
    {
        var yield = part * outline.LeastStress;
        var (k, n) = outline.PowerLaw(yield);
        var index = Math.Log(Math.Max(LeastIndex, n));
        return isReduced ? new[] { k, index } : [yield, k, index];
    });
}

/// <summary>√τ = √τ₀ + √(ηγ).</summary>
internal sealed class CassonModel(bool isReduced = false) : FlowModel(
    "casson", "√τ = √τ0 + √(η·γ)", FlowQuantity.Yielding(
        isReduced, ParameterScale.Root, new FlowQuantity("casson_viscosity_pas", "Casson viscosity", "Pa·s", ParameterScale.Root)))
{
    internal override FlowModel? Reduced => isReduced ? null : new CassonModel(isReduced: true);

    internal override double Stress(double rate, ReadOnlySpan<double> theta)
    {
        var root = (isReduced ? 0 : theta[0]) + (theta[^1] * Math.Sqrt(rate));
        return root * root;
    }

    internal override IEnumerable<double[]> Starts(FlowOutline outline)
    {
        // A straight line of √τ over √γ.
        var (x, y) = (outline.Rates.Average(Math.Sqrt), outline.Stresses.Average(Math.Sqrt));
        var xy = outline.Rates.Select((r, i) => (Math.Sqrt(r) - x) * (Math.Sqrt(outline.Stresses[i]) - y)).Sum();
        var xx = outline.Rates.Sum(r => (Math.Sqrt(r) - x) * (Math.Sqrt(r) - x));
        var slope = xx > 0 ? xy / xx : y / x;
        return isReduced ? [[y / x]] : [[y - (slope * x), slope]];
    }
}

/// <summary>η = η∞ + (η₀ − η∞)/(1 + (λγ)^m).</summary>
internal sealed class CrossModel(bool isReduced = false) : FlowModel(
    "cross", "η = η∞ + (η0 − η∞)/(1 + (λ·γ)^m)", Plateaus.Quantities(isReduced, ParameterScale.Logarithm))
{
    internal override FlowModel? Reduced => isReduced ? null : new CrossModel(isReduced: true);

    internal override bool HasPlateaus => true;

    internal override double Stress(double rate, ReadOnlySpan<double> theta)
    {
        var last = isReduced ? 0 : theta[3];
        return rate * (last + ((Math.Exp(theta[0]) - last) / (1 + Math.Exp(Math.Exp(theta[2]) * (theta[1] + Math.Log(rate))))));
    }

    internal override IEnumerable<double[]> Starts(FlowOutline outline)
        => Plateaus.Starts(outline, isReduced, [Math.Log(0.4), Math.Log(0.7), Math.Log(1)]);
}

/// <summary>η = η∞ + (η₀ − η∞)(1 + (λγ)²)^((n − 1)/2).</summary>
internal sealed class CarreauModel(bool isReduced = false) : FlowModel(
    "carreau", "η = η∞ + (η0 − η∞)·(1 + (λ·γ)²)^((n − 1)/2)", Plateaus.Quantities(isReduced, ParameterScale.Plain))
{
    internal override FlowModel? Reduced => isReduced ? null : new CarreauModel(isReduced: true);

    internal override bool HasPlateaus => true;

    internal override double Stress(double rate, ReadOnlySpan<double> theta)
    {
        var last = isReduced ? 0 : theta[3];
        var times = Math.Exp(2 * (theta[1] + Math.Log(rate)));
        return rate * (last + ((Math.Exp(theta[0]) - last) * Math.Exp((theta[2] - 1) / 2 * Math.Log(1 + times))));
    }

    internal override IEnumerable<double[]> Starts(FlowOutline outline) => Plateaus.Starts(outline, isReduced, [0.2, 0.5, 0.8]);
}

/// <summary>On which scale a parameter of a flow model is fitted.</summary>
internal enum ParameterScale
{
    /// <summary>As it is; may come out below 0, which says that the data do not show it.</summary>
    Plain,

    /// <summary>As its logarithm; stays above 0.</summary>
    Logarithm,

    /// <summary>As its root with a sign; a root below 0 counts as below 0.</summary>
    Root,
}

/// <summary>A fitted parameter of a flow model.</summary>
/// <param name="Name">Its name in answers, with the unit in it.</param>
/// <param name="Words">Its name for a person.</param>
/// <param name="Unit">Its unit; "1" for a pure number.</param>
/// <param name="Value">The value; 0 for a yield stress or last plateau that the data do not show.</param>
/// <param name="StandardError">Its standard error by the delta method; null where nothing tells it.</param>
/// <param name="UpperLimit">Where the value does not differ significantly from 0: what it is below with 95 % confidence. Else null.</param>
public sealed record FlowParameter(string Name, string Words, string Unit, double Value, double? StandardError, double? UpperLimit);
