namespace Viscolog.Core.Curves;

/// <summary>Little at first, then a rise that levels off, the Hill form: (1 + c^h)·z^h/(z^h + c^h), c the half-way dose, h the steepness, both as logarithms.</summary>
internal sealed class LateString() : StringForm(
    PairSettings.LateShare,
    (Math.Log(PairSettings.LateHalfWay), PairSettings.LateHalfWayLogSd),
    (Math.Log(PairSettings.LateSteepness), PairSettings.LateSteepnessLogSd))
{
    public override double Rise(ReadOnlySpan<double> numbers, double z)
    {
        if (z <= 0)
        {
            return 0;
        }

        var (half, steepness) = (Math.Exp(numbers[0]), Math.Exp(numbers[1]));
        return (1 + Math.Pow(half, steepness)) / (1 + Math.Pow(half / z, steepness));
    }
}
