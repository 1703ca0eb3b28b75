namespace Viscolog.Core.Curves;

/// <summary>Flattening (β above 0), even or steepening: (1 − e^(−βz))/(1 − e^(−β)).</summary>
internal sealed class BentString() : StringForm(1 - PairSettings.LateShare, (PairSettings.BendMean, PairSettings.BendSd))
{
    public override double Rise(ReadOnlySpan<double> numbers, double z)
    {
        var bend = numbers[0];
        return Math.Abs(bend) < 1e-6 ? z : (1 - Math.Exp(-bend * z)) / (1 - Math.Exp(-bend));
    }
}
