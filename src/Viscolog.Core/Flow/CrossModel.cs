namespace Viscolog.Core.Flow;

/// <summary>η = η∞ + (η₀ − η∞)/(1 + (λγ)^m).</summary>
internal sealed class CrossModel(bool isReduced = false) : FlowModel("cross", "η = η∞ + (η0 − η∞)/(1 + (λ·γ)^m)", Plateaus.Quantities(isReduced, ParameterScale.Logarithm))
{
    internal override FlowModel? Reduced => isReduced ? null : new CrossModel(isReduced: true);

    internal override double Stress(double rate, ReadOnlySpan<double> theta)
    {
        var last = isReduced ? 0 : theta[3];
        return rate * (last + ((Math.Exp(theta[0]) - last) / (1 + Math.Exp(Math.Exp(theta[2]) * (theta[1] + Math.Log(rate))))));
    }

    internal override IEnumerable<double[]> Starts(FlowOutline outline) => Plateaus.Starts(outline, isReduced, [Math.Log(0.4), Math.Log(0.7), Math.Log(1)]);
}
