namespace Viscolog.Core.Flow;

/// <summary>η = η∞ + (η₀ − η∞)(1 + (λγ)²)^((n − 1)/2).</summary>
internal sealed class CarreauModel(bool isReduced = false) : FlowModel("carreau", "η = η∞ + (η0 − η∞)·(1 + (λ·γ)²)^((n − 1)/2)", Plateaus.Quantities(isReduced, ParameterScale.Plain))
{
    internal override FlowModel? Reduced => isReduced ? null : new CarreauModel(isReduced: true);

    internal override double Stress(double rate, ReadOnlySpan<double> theta)
    {
        var last = isReduced ? 0 : theta[3];
        var times = Math.Exp(2 * (theta[1] + Math.Log(rate)));
        return rate * (last + ((Math.Exp(theta[0]) - last) * Math.Exp((theta[2] - 1) / 2 * Math.Log(1 + times))));
    }

    internal override IEnumerable<double[]> Starts(FlowOutline outline) => Plateaus.Starts(outline, isReduced, [0.2, 0.5, 0.8]);
}
