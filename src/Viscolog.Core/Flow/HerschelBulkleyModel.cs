namespace Viscolog.Core.Flow;

/// <summary>τ = τ₀ + Kγⁿ.</summary>
internal sealed class HerschelBulkleyModel() : FlowModel(
    "herschel-bulkley", "τ = τ0 + K·γ^n", FlowQuantity.Yield(ParameterScale.Plain), FlowQuantity.Consistency, FlowQuantity.Index(ParameterScale.Logarithm))
{
    private static readonly double[] YieldParts = [0, 0.3, 0.6, 0.8, 0.9, 0.97, 0.995];

    private const double LeastIndex = 0.05;

    internal override double Stress(double rate, ReadOnlySpan<double> theta) => theta[0] + Math.Exp(theta[1] + (Math.Exp(theta[2]) * Math.Log(rate)));

    internal override IEnumerable<double[]> Starts(FlowOutline outline) => YieldParts.Select(part =>
    {
        var yield = part * outline.LeastStress;
        var (k, n) = outline.PowerLaw(yield);
        return new[] { yield, k, Math.Log(Math.Max(LeastIndex, n)) };
    });
}
