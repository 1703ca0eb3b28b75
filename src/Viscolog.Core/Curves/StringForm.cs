using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>How the string rises along the dose of the thickener that brings it: from 0 at no dose to 1 at its range top.</summary>
internal abstract class StringForm
{
    private protected StringForm(double share, params ImmutableArray<(double Mean, double Sd)> priors) => (Share, Priors) = (share, priors);

    /// <summary>Every form in use.</summary>
    public static ImmutableArray<StringForm> All { get; } = [new BentString(), new LateString()];

    /// <summary>How often strings rise like this before any reading.</summary>
    public double Share { get; }

    /// <summary>Means and standard deviations of the form's numbers before any reading.</summary>
    public ImmutableArray<(double Mean, double Sd)> Priors { get; }

    /// <summary>The rise.</summary>
    /// <param name="numbers">The form's numbers, in the order of the priors.</param>
    /// <param name="z">Dose over the range top, 0 or more.</param>
    public abstract double Rise(ReadOnlySpan<double> numbers, double z);
}

/// <summary>Flattening (β above 0), even or steepening: (1 − e^(−βz))/(1 − e^(−β)); prior of β from memory.</summary>
internal sealed class BentString() : StringForm(0.75, (0.8, 1.2))
{
    public override double Rise(ReadOnlySpan<double> numbers, double z)
    {
        var bend = numbers[0];
        return Math.Abs(bend) < 1e-6 ? z : (1 - Math.Exp(-bend * z)) / (1 - Math.Exp(-bend));
    }
}

/// <summary>
/// Little at first, then a rise that levels off, the Hill form: (1 + c^h)·z^h/(z^h + c^h), c the half-way dose, h the steepness, both as
/// logarithms; priors from memory.
/// </summary>
internal sealed class LateString() : StringForm(
    0.25,
    (Math.Log(0.4), 0.35),
    (Math.Log(2.5), 0.3))
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
