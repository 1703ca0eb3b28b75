namespace Viscolog.Core.Flow;

/// <summary>τ = ηγ.</summary>
internal sealed class NewtonModel() : FlowModel("newton", "τ = η·γ", new FlowQuantity("viscosity_pas", "viscosity", "Pa·s", ParameterScale.Logarithm))
{
    internal override double Stress(double rate, ReadOnlySpan<double> theta) => Math.Exp(theta[0]) * rate;

    internal override IEnumerable<double[]> Starts(FlowOutline outline) => [[(Math.Log(outline.LeastViscosity) + Math.Log(outline.MostViscosity)) / 2]];
}
