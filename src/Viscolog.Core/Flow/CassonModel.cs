namespace Viscolog.Core.Flow;

/// <summary>√τ = √τ₀ + √(ηγ).</summary>
internal sealed class CassonModel() : FlowModel(
    "casson",
    "√τ = √τ0 + √(η·γ)",
    FlowQuantity.Yield(ParameterScale.Root),
    new FlowQuantity("casson_viscosity_pas", "Casson viscosity", "Pa·s", ParameterScale.Root))
{
    internal override double Stress(double rate, ReadOnlySpan<double> theta)
    {
        var root = theta[0] + (theta[1] * Math.Sqrt(rate));
        return root * root;
    }

    internal override IEnumerable<double[]> Starts(FlowOutline outline)
    {
        // A straight line of √τ over √γ.
        var (x, y) = (outline.Rates.Average(Math.Sqrt), outline.Stresses.Average(Math.Sqrt));
        var xy = outline.Rates.Select((r, i) => (Math.Sqrt(r) - x) * (Math.Sqrt(outline.Stresses[i]) - y)).Sum();
        var xx = outline.Rates.Sum(r => (Math.Sqrt(r) - x) * (Math.Sqrt(r) - x));
        var slope = xx > 0 ? xy / xx : y / x;
        return [[y - (slope * x), slope]];
    }
}
