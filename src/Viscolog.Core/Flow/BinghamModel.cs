namespace Viscolog.Core.Flow;

/// <summary>τ = τ₀ + ηγ.</summary>
internal sealed class BinghamModel() : FlowModel(
    "bingham", "τ = τ0 + η·γ", FlowQuantity.Yield(ParameterScale.Plain), new FlowQuantity("plastic_viscosity_pas", "plastic viscosity", "Pa·s", ParameterScale.Logarithm))
{
    private static readonly double[] YieldParts = [0.5, 0.9, 0.99];

    internal override double Stress(double rate, ReadOnlySpan<double> theta) => theta[0] + (Math.Exp(theta[1]) * rate);

    internal override IEnumerable<double[]> Starts(FlowOutline outline)
        => YieldParts.Select(part => new[] { part * outline.LeastStress, Math.Log(outline.Stresses.Average() / outline.Rates.Average() / 2) });
}
