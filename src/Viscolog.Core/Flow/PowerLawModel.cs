namespace Viscolog.Core.Flow;

/// <summary>τ = Kγⁿ; n may come out below 0, which no liquid at rest has (see <see cref="FlowCurve.Warnings"/>).</summary>
internal sealed class PowerLawModel() : FlowModel("power-law", "τ = K·γ^n", FlowQuantity.Consistency, FlowQuantity.Index(ParameterScale.Plain))
{
    internal override double Stress(double rate, ReadOnlySpan<double> theta) => Math.Exp(theta[0] + (theta[1] * Math.Log(rate)));

    internal override IEnumerable<double[]> Starts(FlowOutline outline)
    {
        var (k, n) = outline.PowerLaw(0);
        return [[k, n]];
    }
}
